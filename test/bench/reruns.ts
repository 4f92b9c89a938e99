import { availableParallelism } from "node:os";
import { join } from "node:path";
import type { Bench } from "./bench.js";
import type { Measured } from "./measured.js";
import { Others } from "./others.js";
import { figure, median, type Table, times } from "./table.js";

/** The files of a bench: folders of job records by their count, and workbooks. */
export interface Files {
  readonly records: ReadonlyMap<number, string>;
  readonly workbooks: string;
  readonly paths: readonly string[];
  /** The new office book. */
  readonly prices: string;
}

/** `rerun` from records and from workbooks beside other programs, at the same number of processes. */
export async function reruns(at: Bench, files: Files, processes: number): Promise<Table> {
  const { size, measured, folder } = at;
  const count = processes === 0 ? availableParallelism() : processes;
  const others = new Others(at, count);
  const found = new Map<string, { jobs: number; all: Measured[] }>();
  let number = 0;
  const run = async (what: string, jobs: number, from: string) => {
    const out = join(folder, `out-${count}-${number++}.xlsx`);
    const one = await measured([
      ...["rerun", from, "--office", files.prices],
      ...["--workers", String(count), "-o", out],
    ]);
    const known = found.get(what) ?? { jobs, all: [] };
    known.all.push(one);
    found.set(what, known);
  };
  for (let round = 0; round < size.rounds; round++) {
    await others.round(files.paths);
    for (const jobs of round === 0 ? [...size.jobs, ...size.once] : size.jobs) {
      await run(`${figure(jobs, 0)} records`, jobs, files.records.get(jobs) as string);
    }
    await run(`${size.workbooks} workbooks`, size.workbooks, files.workbooks);
  }
  return {
    title: `rerun, ${count} processes of each program`,
    note: `Start included. Before and now of each job; the first 3 jobs and 1 in 200 by both evaluators. LibreOffice recalculates each workbook and stores it: its time is that of its start and of each file after the first, ${size.officeFiles} files a process; Gnumeric starts for each file. Medians of ${size.rounds} rounds${size.once.length === 0 ? "" : `, of one for ${size.once.map((jobs) => figure(jobs, 0)).join(", ")}`}.`,
    heads: ["From", "s", "ms a job", "peak MB", "LibreOffice, times", "Gnumeric, times"],
    rows: [...found].map(([what, { jobs, all }]) => {
      const seconds = median(all.map((one) => one.seconds));
      return [
        what,
        figure(seconds),
        figure((seconds * 1000) / jobs, 1),
        figure(Math.max(...all.map(({ peak }) => peak)), 0),
        times(others.office(jobs), seconds),
        times(others.gnumeric(jobs), seconds),
      ];
    }),
  };
}
