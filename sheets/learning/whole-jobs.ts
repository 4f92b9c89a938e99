import {
  calc,
  count,
  date,
  hours,
  lines,
  number,
  percent,
  precise,
  type TableBlock,
  table,
  text,
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
      note: "Of the tasks on sheet Jobs that count. Over: 10% is a tenth more man-hours than by the learned rates.",
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
      age_weight: calc(
        precise,
        "0.5^(MAX(0,(learned_on-ended)/365.25[days])/MAX(0.01,half_life))*counted",
        "Weight by age",
        { working: true },
      ),
    },
  );

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
