import type { AgainstBuilt, JobLine, Line } from "../../../engine/rerun/lines.js";

const told = (bid: number, now: number, made: number, more: Partial<AgainstBuilt> = {}) => ({
  ...{ bid, now, made, kept: 300, keptNow: 300, covered: 1500, toldWhole: true, leftOut: "" },
  ...more,
});

/** Built jobs, invented: three told whole, one in part, one without its book, one that stands in two files, and a bid. */
export const builtJobs: readonly (readonly [job: string, built: JobLine["built"]])[] = [
  ["A", told(10_000, 11_000, 11_000)],
  ["B", told(10_000, 12_000, 12_600)],
  ["C", told(20_000, 20_000, 19_000)],
  ["D", told(5000, 5000, 5200, { toldWhole: false, leftOut: "Counted as planned: 30 h." })],
  ["E", { unknown: "it names no office book" }],
  ["C", told(20_000, 20_000, 19_000)],
  ["F", undefined],
];

const figures = (price: number) => ({ price, cost: price * 0.8, sections: { Work: price * 0.8 } });

/** The lines of a run over these jobs, and an office book and a workbook of learned rates among them. */
export const builtLines = (jobs = builtJobs): readonly Line[] => [
  {
    ...{ line: "run", rillbook: 1, versions: "own", asOf: "2027-01-01", filters: [], moved: false },
    book: { name: "Invented", asOf: "2027-01-01", mark: "" },
    part: { part: 1, of: 1 },
  },
  ...jobs.map(
    ([job, built], i): Line => ({
      ...{ line: "job", file: `jobs/${i}-${job}.json`, source: "record", job, units: "us" },
      ...{ template: "fence", version: 3, by: 3, failing: [], expired: [] },
      before: { ...figures(15_000), from: "own office book" },
      now: { ...figures(16_000), from: "new office book" },
      fails: { must: 0, look: 0 },
      ...(built === undefined ? {} : { built }),
    }),
  ),
  { line: "skipped", file: "jobs/office.xlsx", job: "", because: "office book" },
  { line: "skipped", file: "jobs/rates.xlsx", job: "", because: "learned rates" },
  { line: "end", jobs: jobs.length, errors: 0, skipped: 2, judged: 0 },
];

export const asText = (lines: readonly Line[]): string =>
  lines.map((line) => `${JSON.stringify(line)}\n`).join("");
