import { calc, count, lines, sheet, type Template, template } from "../../engine/template/index.js";
import { tradeUnits } from "../tables/trade-units.js";
import { materialFormulas } from "../vocabulary/materials.js";
import { calibration, calibrationSaid, foretold } from "./calibration.js";
import { evidence } from "./evidence.js";
import { learningFormulas } from "./formulas.js";
import { how } from "./how.js";
import { bookRates, decidedBids, jobList, ways } from "./lists.js";
import { byMethod, learnedRates, spreads } from "./rates.js";
import { learningRules } from "./rules.js";
import { nextBid, nextJob, wholeJobs } from "./whole-jobs.js";
import { byMargin, bySize, wonAndLost } from "./won-and-lost.js";

const told = lines("What built jobs tell", {
  jobs_learned_from: calc(count, "SUM(whole_jobs.counted)", "Built jobs"),
  rows_learned_from: calc(count, "SUM(evidence.counted)", "Rows that count"),
  rows_left_out: calc(count, "SUM(spreads.excluded)", "Rows left out"),
  rates_known: calc(count, "SUMPRODUCT((learned.jobs>0)*1)", "Rates with jobs"),
  rates_faster: calc(count, "SUMPRODUCT((learned.jobs>0)*(book_rates.book_rate<learned.low))", "Faster than the book"),
  rates_slower: calc(count, "SUMPRODUCT((learned.jobs>0)*(book_rates.book_rate>learned.high))", "Slower than the book"),
  rows_far: calc(count, "SUM(spreads.far)", "Rows far from others"),
  rates_taken: calc(count, "SUMPRODUCT(learned.take_it*1)", "Rates to be taken"),
});

/** The template of a workbook of learned rates with room for so many rows of jobs and tasks. */
export function learning(rows: number): Template {
  const jobs = Math.ceil(rows / 5);
  return template({
    name: `learned-rates-${rows}`,
    version: 1,
    title: "Production rates learned from built jobs",
    headline: ["jobs_learned_from", "rows_learned_from", "rates_faster", "rates_slower", "rows_far", "rows_left_out"],
    sheets: [
      sheet("Rates", "What each production rate of the office book came to on built jobs.", [learnedRates]),
      sheet("Between jobs", "How far single jobs lie from one another, and from the rest.", [spreads]),
      sheet("By method", "The same rates by machine, by small machine and by hand.", [byMethod]),
      sheet("Whole jobs", "Man-hours of whole jobs, and what the next one may come to.", [
        nextBid,
        nextJob,
        wholeJobs(jobs),
      ]),
      sheet("Calibration", "Whether jobs came out as the jobs before them foretold.", [
        calibration,
        calibrationSaid,
        foretold(jobs),
      ]),
      sheet("Won and lost", "Which bids were won, by price and by margin.", [wonAndLost, bySize, byMargin]),
      sheet("Jobs", "What every task of every built job took: the evidence.", [evidence(rows)], { printed: false }),
      sheet("Rules", "How jobs are weighed. These are the office's own to set.", [learningRules, told]),
      sheet("How", "What the mathematics is, in words.", how),
      sheet(
        "Lists",
        "What rillbook learn read: rates of the office book, methods, jobs.",
        [bookRates, ways, jobList(jobs), decidedBids(jobs)],
        {
          printed: false,
        },
      ),
      sheet("Units", "Units of the office book and of the jobs.", [tradeUnits], { hidden: true }),
    ],
    formulas: [...materialFormulas, ...learningFormulas],
    learns: {
      on: "learned_on",
      interval: "interval_share",
      evidence: {
        ...{ table: "evidence", task: "task", job: "job", ended: "ended", code: "code", condition: "method" },
        ...{ quantity: "quantity", unit: "unit", hours: "hours", factor: "time_factor", planned: "planned_rate" },
        plannedQuantity: "quantity_planned",
        reason: "reason",
        counted: "counted",
      },
      rates: { table: "book_rates", code: "code", means: "means", unit: "unit", inBook: "book_rate" },
      learned: { table: "learned", takeIt: "take_it", forBook: "new_rate", low: "low", high: "high", jobs: "jobs" },
      overrun: {
        ...{ takeIt: "take_overrun", half: "bid_half_over", fifth: "bid_fifth_over", jobs: "bid_count" },
        counts: "whole_jobs.bid_counted",
      },
      ways: { table: "ways", code: "code", condition: "method" },
      jobs: { table: "job_list", job: "job", ended: "ended" },
      decided: { table: "decided", job: "bid_job", won: "won", price: "price", cost: "cost" },
      condition: "work_method",
      book: {
        ...{ table: "rates", code: "code", means: "description", value: "value", unit: "unit", source: "source" },
      },
    },
  });
}
