import { calc, number, percent, precise, type TableBlock } from "../../engine/template/index.js";

type Columns = TableBlock["columns"];

/** What the rows of evidence with a key make of a rate of the office book, column by column. */
export const posterior = (key: string, rowKey: string, inBook: string) => {
  const summed = (column: string) => `SUM_WHERE(evidence.${column},evidence.${key},${rowKey})`;
  return {
    jobs: calc(number, summed("starts"), "Jobs", { decimals: 0 }),
    age_count: calc(precise, summed("age_count"), "Count by age", { working: true }),
    weights: calc(number, summed("weight"), "Jobs count as", {
      decimals: 1,
      note: "In large, new jobs: small tasks and old jobs count less.",
    }),
    worth: calc(precise, "book_worth+weights", "With the book", { working: true }),
    pull: calc(precise, summed("pull"), "Weighted pace", { working: true }),
    squares: calc(precise, summed("squares"), "Weighted squares", { working: true }),
    center: calc(precise, "pull/MAX(0.000001,worth)", "Log of learned pace", { working: true }),
    freedom: calc(number, "prior_jobs+age_count", "Degrees of freedom", { working: true }),
    deviation: calc(
      precise,
      "SQRT(POSTERIOR_VARIANCE(prior_spread,prior_jobs,squares,worth,center,freedom))",
      "Log of spread",
      { working: true },
    ),
    rate: calc(precise, `${inBook}*EXP(center)`, "Learned rate", { strong: true, decimals: 3 }),
    change: calc(percent, "EXP(center)-1", "Change", { decimals: 0 }),
    wide: calc(precise, "T_WITHIN(interval_share,freedom)*deviation", "Log of half width", { working: true }),
    low: calc(precise, `${inBook}*EXP(center-wide/SQRT(worth))`, "Mean rate, from", { decimals: 3 }),
    high: calc(precise, `${inBook}*EXP(center+wide/SQRT(worth))`, "Mean rate, to", { decimals: 3 }),
    spread: calc(percent, "EXP(deviation)-1", "Spread between jobs", { decimals: 0 }),
    next_low: calc(precise, `${inBook}*EXP(center-wide*SQRT(1+1/worth))`, "One job, from", { decimals: 3 }),
    next_high: calc(precise, `${inBook}*EXP(center+wide*SQRT(1+1/worth))`, "One job, to", { decimals: 3 }),
  } satisfies Columns;
};
