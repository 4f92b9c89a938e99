import { open } from "node:fs/promises";
import type { EndLine, JobLine, NoJob, ResultLine, RunLine } from "./lines.js";
import { lineAt, readLines } from "./result-file.js";

interface Entry {
  readonly file: string;
  readonly kind: ResultLine["line"];
  readonly job: string;
  readonly judged: boolean;
  readonly because?: NoJob;
  readonly path: string;
  readonly from: number;
  readonly length: number;
}

/** A result, and whether totals take it in: of several files of one job only the first does. */
export interface Result {
  readonly line: ResultLine;
  /** The file that counts instead. */
  readonly sameAs?: string;
}

/**
 * The results in one or more result files: the last line for each file, in the order of their
 * paths. Only places are held; the lines are read again when asked for.
 */
export class Results {
  private constructor(
    readonly runs: readonly RunLine[],
    readonly ends: readonly EndLine[],
    private readonly entries: readonly Entry[],
    /** The first file of each job that has several. */
    private readonly firsts: ReadonlyMap<string, string>,
  ) {}

  /** Throws RillbookError for a file that is missing or not a result file. */
  static async of(paths: readonly string[]): Promise<Results> {
    const latest = new Map<string, Entry>();
    const runs: RunLine[] = [];
    const ends: EndLine[] = [];
    for (const path of paths) {
      for await (const { line, from, length } of readLines(path)) {
        if (line.line === "run") runs.push(line);
        else if (line.line === "end") ends.push(line);
        else {
          const job = line.line === "job" ? line.job : "";
          const judged = line.judged ?? false;
          const because = line.line === "skipped" ? line.because : undefined;
          latest.set(line.file, {
            file: line.file,
            kind: line.line,
            job,
            judged,
            ...(because === undefined ? {} : { because }),
            path,
            from,
            length,
          });
        }
      }
    }
    const entries = [...latest.values()].sort((a, b) => (a.file < b.file ? -1 : 1));
    return new Results(runs, ends, entries, sharedJobs(entries));
  }

  /** How many results there are of a kind; what is no job among the files is none. */
  count(kind: ResultLine["line"]): number {
    return this.entries.filter((entry) => entry.kind === kind && entry.because === undefined)
      .length;
  }

  /** Files that lay among the jobs and are none, such as office books. */
  noJobs(kind: NoJob): string[] {
    return this.entries.filter(({ because }) => because === kind).map(({ file }) => file);
  }

  /** How many jobs both evaluators calculated, whichever run of a resumed one did. */
  get judged(): number {
    return this.entries.filter(({ judged }) => judged).length;
  }

  /** Each job number that several files have, with these files. */
  duplicates(): { job: string; files: string[] }[] {
    const found = new Map([...this.firsts.keys()].map((job) => [job, [] as string[]]));
    for (const { job, file } of this.entries) if (job !== "") found.get(job)?.push(file);
    return [...found].map(([job, files]) => ({ job, files }));
  }

  /** All results of a kind in the order of their paths. */
  async *each(kind: ResultLine["line"]): AsyncGenerator<Result> {
    const handles = new Map<string, Awaited<ReturnType<typeof open>>>();
    try {
      for (const entry of this.entries) {
        if (entry.kind !== kind) continue;
        const handle = handles.get(entry.path) ?? (await open(entry.path, "r"));
        handles.set(entry.path, handle);
        const line = lineAt(handle, entry) as ResultLine;
        const first = this.firsts.get(entry.job);
        const counts = first === undefined || first === entry.file;
        yield { line, ...(counts ? {} : { sameAs: first }) };
      }
    } finally {
      for (const handle of handles.values()) await handle.close();
    }
  }

  async *jobs(): AsyncGenerator<{ line: JobLine; sameAs?: string }> {
    for await (const { line, sameAs } of this.each("job")) {
      yield { line: line as JobLine, ...(sameAs === undefined ? {} : { sameAs }) };
    }
  }
}

function sharedJobs(entries: readonly Entry[]): Map<string, string> {
  const first = new Map<string, string>();
  const shared = new Map<string, string>();
  for (const { job, file } of entries) {
    if (job === "") continue;
    const known = first.get(job);
    if (known === undefined) first.set(job, file);
    else shared.set(job, known);
  }
  return shared;
}
