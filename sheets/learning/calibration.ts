import {
  calc,
  count,
  lines,
  number,
  percent,
  precise,
  prose,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../engine/template/index.js";

/** What the jobs before each job would have told of it, and how it came out: nothing of a job is used to foretell it. */
export const foretold = (rows: number): TableBlock =>
  table(
    "foretold",
    "Jobs as those before them foretold",
    {
      rows,
      beside: "whole_jobs",
      filled: "LEN(job_name)>0",
      shown: "counted>0",
      note: "In the order in which jobs ended. Over: man-hours against those by the office book. P50, P80: what the book and all jobs above foretell.",
    },
    {
      foretold_job: calc(text, "job_name", "Job"),
      book_log: calc(
        precise,
        "IF(counted>0,LN(MAX(0.000001[h],actual)/MAX(0.000001[h],by_book)),0)",
        "Log of overrun",
        { working: true },
      ),
      over_book: calc(percent, "EXP(book_log)-1", "Over the book", { decimals: 0 }),
      jobs_known: calc(number, "above.jobs_known+above.counted_here", "Jobs before", {
        first: "0",
        decimals: 0,
      }),
      counted_here: calc(number, "counted", "Counted", { working: true, decimals: 0 }),
      log_sum: calc(precise, "above.log_sum+above.counted_here*above.book_log", "Sum of logs", {
        first: "0",
        working: true,
      }),
      log_squares: calc(precise, "above.log_squares+above.counted_here*above.book_log^2", "Sum of squares", {
        first: "0",
        working: true,
      }),
      known_worth: calc(precise, "book_worth+jobs_known", "Jobs and book", { working: true }),
      known_center: calc(precise, "log_sum/known_worth", "Log of mean overrun", { working: true }),
      known_freedom: calc(number, "prior_jobs+jobs_known", "Degrees of freedom", { working: true }),
      known_spread: calc(
        precise,
        "SQRT(POSTERIOR_VARIANCE(whole_spread,prior_jobs,log_squares,known_worth,known_center,known_freedom))",
        "Log of spread",
        { working: true },
      ),
      fifty: calc(percent, "EXP(known_center)-1", "P50 foretold", { decimals: 0 }),
      eighty: calc(
        percent,
        "EXP(known_center+T_WITHIN(60%,known_freedom)*known_spread*SQRT(1+1/known_worth))-1",
        "P80 foretold",
        { decimals: 0 },
      ),
      within_fifty: calc(yesno, "AND(counted>0,over_book<=fifty)", "Within P50", { blank: "FALSE" }),
      within_eighty: calc(yesno, "AND(counted>0,over_book<=eighty)", "Within P80", {
        blank: "FALSE",
        strong: true,
      }),
    },
  );

const wilson = "NIST/SEMATECH e-Handbook of Statistical Methods, section 7.2.4.1, Wilson's interval (from memory)";

/** How many jobs stayed within what was foretold, and between which shares the true one may lie. */
export const calibration = lines("How often jobs stayed within", {
  foretold_jobs: calc(count, "SUM(whole_jobs.counted)", "Jobs compared"),
  within_p_fifty: calc(count, "SUMPRODUCT(foretold.within_fifty*1)", "Jobs within P50"),
  within_p_eighty: calc(count, "SUMPRODUCT(foretold.within_eighty*1)", "Jobs within P80", { strong: true }),
  within_share: calc(percent, "within_p_eighty/MAX(1,foretold_jobs)", "Share within P80", {
    decimals: 0,
    note: "Right would be 80%.",
  }),
  within_normal: calc(precise, "NORM.S.INV(0.5+MIN(0.999,MAX(0,interval_share))/2)", "Normal quantile", {
    working: true,
  }),
  within_low: calc(percent, "WILSON(within_share,foretold_jobs,0-within_normal)", "True share, from", {
    decimals: 0,
    source: wilson,
  }),
  within_high: calc(percent, "WILSON(within_share,foretold_jobs,within_normal)", "True share, to", {
    decimals: 0,
    source: wilson,
  }),
});

const says = ["Too few to tell.", "Too many run over P80.", "P80 is wide.", "Jobs do not contradict P80."];

export const calibrationSaid = prose("What that says", {
  calibration_says: calc(
    text,
    `IF(foretold_jobs<5,"${says[0]}",IF(within_high<80%,"${says[1]}",IF(within_low>80%,"${says[2]}","${says[3]}")))`,
    "What the count says",
  ),
  calibration_how_close: calc(
    text,
    "~So few jobs tell the share within P80 no closer than from {within_low} to {within_high}.",
    "How close it tells",
  ),
});
