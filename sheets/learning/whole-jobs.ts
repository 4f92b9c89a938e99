import {
  calc,
  check,
  count,
  date,
  hours,
  input,
  lines,
  number,
  percent,
  precise,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../engine/template/index.js";

/** One row a job: the man-hours of all its compared tasks against those by the learned rates. */
export const wholeJobs = (rows: number): TableBlock =>
  table(
    "whole_jobs",
    "Jobs as a whole",
    {
      rows,
      beside: "job_list",
      filled: "LEN(job)>0",
      shown: "counted>0",
      note: "Of the tasks on sheet Jobs that count. Over: 10% is a tenth more man-hours than by the learned rates. Over the bid: the same, of quantities as planned and rates as marked.",
    },
    {
      job_name: calc(text, "job", "Job"),
      ended_on: calc(date, "ended", "Ended"),
      place: calc(count, "PLACE_OR_ZERO(job_list.job,job)", "Row", { working: true }),
      actual: calc(hours, "SUMPRODUCT((evidence.job_place=place)*evidence.counted,evidence.hours)", "Man-hours"),
      by_book: calc(hours, "SUM_WHERE(evidence.own_hours,evidence.job_place,place)", "By the book"),
      by_learned: calc(hours, "SUM_WHERE(evidence.learned_hours,evidence.job_place,place)", "By learned rates"),
      counted: calc(number, "IF(AND(actual>0[h],by_learned>0[h]),1,0)", "Counted", { working: true, decimals: 0 }),
      over_log: calc(
        precise,
        "IF(counted>0,LN(MAX(0.000001[h],actual)/MAX(0.000001[h],by_learned)),0)",
        "Log of overrun",
        { working: true },
      ),
      over: calc(percent, "EXP(over_log)-1", "Over", { strong: true, decimals: 0 }),
      as_bid: calc(hours, "SUM_WHERE(evidence.bid_hours,evidence.job_place,place)", "As bid by rates taken"),
      bid_counted: calc(number, "IF(AND(actual>0[h],as_bid>0[h]),1,0)", "Compared with a bid", {
        working: true,
        decimals: 0,
      }),
      bid_log: calc(
        precise,
        "IF(bid_counted>0,LN(MAX(0.000001[h],actual)/MAX(0.000001[h],as_bid)),0)",
        "Log of over bid",
        { working: true },
      ),
      over_bid: calc(percent, "EXP(bid_log)-1", "Over the bid", { strong: true, decimals: 0 }),
      age_weight: calc(
        precise,
        "0.5^(MAX(0,(learned_on-ended)/365.25[days])/MAX(0.01,half_life))*counted",
        "Weight by age",
        { working: true },
      ),
    },
  );

/**
 * How far whole jobs went over what would have been bid for them: quantities as planned, at the rates as they are marked.
 * This is what the office book takes, since it is bids that it is for.
 */
export const nextBid = lines("Man-hours of the next bid", {
  bid_count: calc(count, "SUM(whole_jobs.bid_counted)", "Jobs compared with a bid"),
  bid_weight: calc(number, "SUMPRODUCT(whole_jobs.age_weight,whole_jobs.bid_counted)", "Bids count as", {
    working: true,
  }),
  bid_worth: calc(number, "book_worth+bid_weight", "Bids with the book", { working: true }),
  bid_center: calc(
    precise,
    "SUMPRODUCT(whole_jobs.age_weight,whole_jobs.bid_log)/MAX(0.000001,bid_worth)",
    "Log of mean over bid",
    { working: true },
  ),
  bid_squares: calc(
    precise,
    "SUMPRODUCT(whole_jobs.age_weight,whole_jobs.bid_log,whole_jobs.bid_log)",
    "Weighted squares of bids",
    { working: true },
  ),
  bid_freedom: calc(number, "prior_jobs+bid_weight", "Degrees of freedom of bids", { working: true }),
  bid_deviation: calc(
    precise,
    "SQRT(POSTERIOR_VARIANCE(whole_spread,prior_jobs,bid_squares,bid_worth,bid_center,bid_freedom))",
    "Log of spread of bids",
    { working: true },
  ),
  bid_half_over: calc(percent, "EXP(bid_center)-1", "Over bid, half of jobs", {
    strong: true,
    note: "P50: by the rates as they are marked to be taken, and by more or less work than planned.",
  }),
  bid_fifth_over: calc(
    percent,
    "EXP(bid_center+T_WITHIN(60%,bid_freedom)*bid_deviation*SQRT(1+1/bid_worth))-1",
    "Over bid, one of five",
    { strong: true, note: "P80, the same. A bid with it tells what contingency would cover it." },
  ),
  take_overrun: input(yesno, "Take the overrun", {
    default: false,
    note: "yes: both go into a new office book by rillbook learn --take. Mark the rates first: they move it.",
  }),
  overrun_of_enough: check(
    "OR(NOT(take_overrun),bid_count>=5)",
    "The overrun rests on {bid_count|0} jobs, so mostly on the spread expected. Clear take_overrun on sheet Whole jobs.",
    { label: "Overrun from few jobs", level: "look" },
  ),
});

/** What the next whole job may come to, which a bid's contingency is for. */
export const nextJob = lines("Man-hours of the next job", {
  whole_count: calc(count, "SUM(whole_jobs.counted)", "Jobs compared"),
  whole_weight: calc(number, "SUM(whole_jobs.age_weight)", "Jobs count as", { decimals: 1 }),
  whole_worth: calc(number, "book_worth+whole_weight", "With the expected spread", { working: true }),
  whole_center: calc(
    precise,
    "SUMPRODUCT(whole_jobs.age_weight,whole_jobs.over_log)/MAX(0.000001,whole_worth)",
    "Log of mean overrun",
    { working: true },
  ),
  whole_squares: calc(
    precise,
    "SUMPRODUCT(whole_jobs.age_weight,whole_jobs.over_log,whole_jobs.over_log)",
    "Weighted squares",
    { working: true },
  ),
  whole_freedom: calc(number, "prior_jobs+whole_weight", "Degrees of freedom", { working: true }),
  whole_deviation: calc(
    precise,
    "SQRT(POSTERIOR_VARIANCE(whole_spread,prior_jobs,whole_squares,whole_worth,whole_center,whole_freedom))",
    "Log of spread",
    { working: true },
  ),
  whole_p_fifty: calc(percent, "EXP(whole_center)-1", "Overrun in half of jobs", {
    strong: true,
    note: "P50: half of the jobs take more man-hours than planned by the learned rates and this.",
  }),
  whole_p_eighty: calc(
    percent,
    "EXP(whole_center+T_WITHIN(60%,whole_freedom)*whole_deviation*SQRT(1+1/whole_worth))-1",
    "Overrun in one of five",
    {
      strong: true,
      note: "P80: one job in five takes more man-hours than planned by the learned rates and this.",
    },
  ),
});
