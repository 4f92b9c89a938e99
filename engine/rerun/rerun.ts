import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { OfficeBook } from "../book/office-book.js";
import { RillbookError } from "../errors.js";
import { serialOf } from "../job/date.js";
import { judged, mustBeFile } from "../output/judge.js";
import { targetOf } from "../output/target.js";
import { type Output, outputTo } from "../output/write.js";
import { type Filter, filterOf, mustKnowFilters } from "./filter.js";
import type { EndLine, Line, RunLine } from "./lines.js";
import { inPart, type Part } from "./part.js";
import { findFiles } from "./paths.js";
import { Progress } from "./progress.js";
import type { Asked } from "./rerun-one.js";
import { isUnfinished, ResultFile } from "./result-file.js";
import { Results } from "./results.js";
import { leftBy, type ResultKind, resultOf } from "./resume.js";
import { runAll, tasksFor } from "./run.js";
import { type Totals, totalsOf } from "./running-totals.js";
import type { Trade } from "./trade.js";
import { inThisThread, inThreads } from "./workers.js";

export interface RerunOptions {
  /** Files, folders, patterns. */
  readonly named: readonly string[];
  /** Path of the new office book. */
  readonly office: string;
  /** Path of the summary workbook; the result lines stand beside it. Without it nothing is kept. */
  readonly output?: string;
  readonly versions: "own" | "newest";
  /** `2027-01-15`: quotes are held against this day. */
  readonly asOf: string;
  readonly filters: readonly string[];
  /** One job in so many is calculated by both evaluators; 0: only the first ones. */
  readonly sample: number;
  readonly part?: Part;
  readonly resume: boolean;
  /** Split the change of each price by item. */
  readonly moved: boolean;
  /** Worker threads; 0: one for each processor. */
  readonly workers: number;
  /** Files of templates of an office's own, which each worker thread loads by itself. */
  readonly templateFiles?: readonly string[];
}

/** How a run tells of itself while it goes on, and how it is told to stop. */
export interface Listener {
  /** Gets each result line as it comes, and the first and last lines. */
  readonly line?: (line: Line) => void;
  /** Gets the progress; for a terminal. */
  readonly progress?: (text: string) => void;
  /** Gets it as a line now and then; for a log. */
  readonly progressLine?: (line: string) => void;
  readonly signal?: AbortSignal;
}

/** What came of a run. */
export interface Outcome {
  readonly totals: Totals;
  readonly duplicates: readonly { readonly job: string; readonly files: readonly string[] }[];
  /** How many of how many files were done, where the run was stopped. */
  readonly stopped?: { readonly done: number; readonly of: number };
  /** The result lines and the summary, where they are kept. */
  readonly lines?: string;
  readonly summary?: string;
}

/**
 * Calculates old jobs again under a new office book. Nothing in the old files is changed; what
 * is wrong with one job is its result and stops no other.
 * @param templatesModule URL of a module that exports `templates`, for worker threads; without it all is done in this thread
 * Throws RillbookError for an office book that cannot be read, names that find nothing, outputs
 * that cannot be written, and where the two evaluators differ.
 */
export async function rerun(
  trade: Trade,
  templatesModule: string | undefined,
  options: RerunOptions,
  listener: Listener = {},
): Promise<Outcome> {
  const filters = options.filters.map(filterOf);
  mustKnowFilters(filters, trade.templates);
  const place = await placeFor(options);
  const book = await trade.readBook(options.office);
  const asked = askedOf(options, book, filters);
  const run = runLine(options, book);
  const { output } = options;
  const kept = output === undefined ? undefined : linesPath(output, options.part);
  const files = await filesFor(options, kept);
  const temporary = kept === undefined ? await mkdtemp(join(tmpdir(), "rillbook-")) : undefined;
  const path = kept ?? join(temporary as string, "lines.jsonl");
  try {
    const ended = await runInto(path, run, files, {
      trade,
      templatesModule,
      asked,
      options,
      listener,
      drained: () => {
        // exceljs takes its time to load, and the threads have the processors until then
        // a fault of it is met where it is needed
        if (place !== undefined) summaryWriter().catch(() => undefined);
      },
    });
    const results = await Results.of([path]);
    const totals = await totalsOf(results);
    const summary = place === undefined ? undefined : output;
    if (place !== undefined) {
      const { writeSummary } = await summaryWriter();
      await writeSummary(place, results, totals);
    }
    return {
      totals,
      duplicates: results.duplicates(),
      ...(ended.complete ? {} : { stopped: { done: ended.done, of: files.length } }),
      ...(kept === undefined ? {} : { lines: kept }),
      ...(summary === undefined ? {} : { summary }),
    };
  } finally {
    if (temporary !== undefined) await rm(temporary, { recursive: true, force: true });
  }
}

const summaryWriter = () => import("./summary/write-summary.js");

/** Looks at what the run writes before it begins. Gives the summary, where one is written. */
async function placeFor({
  named,
  office,
  output,
  part,
  resume,
}: RerunOptions): Promise<Output | undefined> {
  if (output === undefined) return undefined;
  const plan = { inputs: [office, ...named] };
  const summary = await outputTo(output, { ...plan, kind: "summary" });
  const lines = linesPath(output, part);
  // lines to go on with are read, and what is wrong with them is told, before they grow
  if (resume) await mustBeFile(await targetOf(lines));
  else await judged(lines, { ...plan, kind: "results" });
  return part === undefined ? summary : undefined;
}

/** `rerun.jsonl`, or `rerun.part-3-of-16.jsonl`, beside the summary. */
export function linesPath(output: string, part?: Part): string {
  const name = output.replace(/\.xlsx$/i, "");
  return part === undefined ? `${name}.jsonl` : `${name}.part-${part.part}-of-${part.of}.jsonl`;
}

function askedOf(options: RerunOptions, book: OfficeBook, filters: readonly Filter[]): Asked {
  const day = serialOf(options.asOf);
  if (day === undefined) {
    throw new RillbookError(
      "date-invalid",
      `--as-of is ${JSON.stringify(options.asOf)}, but must be a date like 2027-01-15.`,
    );
  }
  return { book, versions: options.versions, day, filters, moved: options.moved };
}

function runLine(options: RerunOptions, { name, asOf, mark }: OfficeBook): RunLine {
  return {
    line: "run",
    rillbook: 1,
    book: { name, asOf, mark },
    versions: options.versions,
    asOf: options.asOf,
    filters: options.filters,
    moved: options.moved,
    ...(options.part === undefined ? {} : { part: options.part }),
  };
}

/** The job files, without what the run itself writes. An office book among them is a result: left out, with its name. */
async function filesFor(options: RerunOptions, lines: string | undefined): Promise<string[]> {
  const { named, output, part } = options;
  const own = [output, lines].filter((path) => path !== undefined);
  const files = await findFiles(named, own);
  return part === undefined ? files : files.filter((file) => inPart(file, part));
}

interface Way {
  readonly trade: Trade;
  readonly templatesModule: string | undefined;
  readonly asked: Asked;
  readonly options: RerunOptions;
  readonly listener: Listener;
  /** Called when no file is left to begin: threads may idle from then on. */
  readonly drained: () => void;
}

/** Counts every file once, also those that the run before a resumed one did. */
function endLine(results: readonly ResultKind[]): EndLine {
  const count = (kind: ResultKind["kind"]) => results.filter((one) => one.kind === kind).length;
  const judged = results.filter((one) => one.judged).length;
  const [jobs, errors, skipped] = [count("job"), count("error"), count("skipped")];
  return { line: "end", jobs, errors, skipped, judged };
}

/** Does the files and writes their lines; tells whether it came to the end. */
async function runInto(
  path: string,
  run: RunLine,
  files: readonly string[],
  { trade, templatesModule, asked, options, listener, drained }: Way,
): Promise<{ complete: boolean; done: number }> {
  const left = options.resume ? await leftBy(path, run) : undefined;
  if (left === undefined && (await isUnfinished(path))) {
    throw new RillbookError(
      "run-unfinished",
      `${path} holds an unfinished run. Go on from it with --resume, or delete it to start again.`,
    );
  }
  const file =
    left === undefined ? await ResultFile.begin(path, run) : await ResultFile.goOn(path, left.at);
  const signal = listener.signal ?? new AbortController().signal;
  const progress = new Progress(files.length, listener.progress, listener.progressLine);
  const workers =
    templatesModule === undefined
      ? inThisThread(trade, asked)
      : inThreads(
          { templatesModule, templateFiles: options.templateFiles ?? [] },
          asked,
          options.workers,
          files.length,
        );
  const tell = (line: Line) => listener.line?.(line);
  const results = new Map(left?.results);
  let done = 0;
  try {
    tell(run);
    const tasks = tasksFor(files, left?.done ?? new Map(), options.sample);
    await runAll(
      tasks,
      workers,
      async (lines) => {
        await file.add(lines);
        for (const line of lines) {
          tell(line);
          results.set(line.file, resultOf(line));
        }
      },
      (count) => {
        done += count;
        progress.add(count);
      },
      signal,
      drained,
    );
    const complete = done === files.length;
    if (complete) {
      const end = endLine([...results.values()]);
      await file.add([end]);
      tell(end);
    }
    return { complete, done };
  } finally {
    progress.end();
    await workers.close();
    await file.close();
  }
}
