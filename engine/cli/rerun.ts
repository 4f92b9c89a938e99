import { Command, InvalidArgumentError, Option } from "commander";
import { RillbookError } from "../errors.js";
import { today } from "../job/date.js";
import type { BuiltTotals } from "../rerun/built-totals.js";
import { join } from "../rerun/join.js";
import { partOf } from "../rerun/part.js";
import { type Outcome, rerun } from "../rerun/rerun.js";
import type { Told, Totals } from "../rerun/running-totals.js";
import { tradeOf } from "../rerun/trade.js";
import type { Context } from "./context.js";

interface Options {
  readonly office?: string;
  readonly output?: string;
  readonly templateVersion: "own" | "newest";
  readonly asOf?: string;
  readonly filter: readonly string[];
  readonly sample: number;
  readonly part?: string;
  readonly join?: true;
  readonly resume?: true;
  readonly moved?: true;
  readonly workers: number;
  readonly json?: true;
}

const help = `
A folder is searched with all below it, for job records (.json) and workbooks (.xlsx); a pattern
in quotes is matched by rillbook: "jobs/**/2026-*.json". Old files are never changed.

What a job cost before is read from a workbook as it was last calculated, and calculated for a
job record under the office book that it names. Results are written line by line to a file beside
the summary (rerun.jsonl for rerun.xlsx), whole also after Ctrl-C; --resume goes on from it, or begins.
Exit status: 0 done; 1 files gave no result, cells are in error, checks fail that did not (or are not
known to have), or the new book lacks items; 2 bad input or usage; 3 the two evaluators differ;
4 stopped, by Ctrl-C or SIGTERM.

Examples:
  rillbook rerun jobs/ --office 2027.xlsx -o rerun.xlsx
  rillbook rerun jobs/ --office 2027.xlsx --filter "price>=20000" --moved -o rerun.xlsx

In 16 parts that share nothing, here by GNU parallel, then put together:
  seq 16 | parallel rillbook rerun jobs/ --office 2027.xlsx --workers 1 --part {}/16 -o rerun.xlsx
  rillbook rerun --join rerun.part-*.jsonl -o rerun.xlsx`;

/** `rillbook rerun`: old jobs under a new office book. */
export function rerunCommand(context: Context): Command {
  return new Command("rerun")
    .description("calculate old jobs again under a new office book, and tell what changed")
    .argument(
      "<files...>",
      "job records, workbooks, folders or patterns; with --join, result files",
    )
    .option("--office <file>", "the new office book")
    .option("-o, --output <xlsx>", "summary workbook to write")
    .option("--json", "result lines as JSON to standard output")
    .addOption(
      new Option("--template-version <which>", "each job's own template version, or the newest")
        .choices(["own", "newest"])
        .default("own"),
    )
    .option(
      "--filter <condition>",
      "only jobs such as price>=20000 (may be repeated)",
      collected,
      [],
    )
    .option("--as-of <day>", "count quotes that end before this day as expired (default: today)")
    .option("--moved", "split the change of each price by office-book item")
    .option(
      "--sample <n>",
      "check one job in n by a second evaluator; 0: the first 3 only",
      whole,
      200,
    )
    .option("--part <i/n>", "do only this part of the jobs")
    .option("--join", "put the result files of all parts together")
    .option("--resume", "go on with a run that was stopped")
    .option("--workers <n>", "worker threads; 0: one for each processor", whole, 0)
    .addHelpText("after", help)
    .action(async (files: string[], options: Options) => {
      if (options.join) return joinParts(context, files, options);
      await rerunFiles(context, files, options);
    });
}

/** Ctrl-C, and what a cluster or a service manager sends before it kills. */
const stopSignals = ["SIGINT", "SIGTERM"] as const;

async function rerunFiles(context: Context, files: string[], options: Options): Promise<void> {
  const { office, output } = options;
  if (office === undefined) {
    throw new RillbookError("office-missing", "Name the new office book with --office <file>.");
  }
  if (options.resume && output === undefined) {
    throw new RillbookError("output-missing", "--resume needs the -o <xlsx> of the stopped run.");
  }
  const stop = new AbortController();
  const interrupted = () => stop.abort();
  for (const signal of stopSignals) process.once(signal, interrupted);
  try {
    const outcome = await rerun(
      tradeOf(context.templates),
      context.templatesModule,
      {
        named: files,
        office,
        ...(output === undefined ? {} : { output }),
        versions: options.templateVersion,
        asOf: options.asOf ?? today(),
        filters: options.filter,
        sample: options.sample,
        ...(options.part === undefined ? {} : { part: partOf(options.part) }),
        resume: options.resume ?? false,
        moved: options.moved ?? false,
        workers: options.workers,
        templateFiles: context.templateFiles ?? [],
      },
      {
        signal: stop.signal,
        ...(options.json ? { line: (line) => context.json(line) } : {}),
        ...(context.progress === undefined
          ? { progressLine: (line: string) => context.err(`${line}\n`) }
          : { progress: context.progress }),
      },
    );
    context.status = statusOf(outcome.totals, outcome.stopped !== undefined);
    tell(context, outcome, options.json ?? false);
  } finally {
    for (const signal of stopSignals) process.removeListener(signal, interrupted);
  }
}

async function joinParts(context: Context, files: string[], options: Options): Promise<void> {
  const { results, totals } = await join(files, options.output);
  context.status = statusOf(totals, false);
  const outcome = {
    totals,
    duplicates: results.duplicates(),
    ...(options.output === undefined ? {} : { summary: options.output }),
  };
  tell(context, outcome, options.json ?? false);
}

function statusOf(totals: Totals, stopped: boolean): number {
  const { errors, mustNewlyFailing, mustFailingUnknown, jobsInError, lacking } = totals;
  const faults = errors + mustNewlyFailing + mustFailingUnknown + jobsInError + lacking.count;
  return stopped ? 4 : faults > 0 ? 1 : 0;
}

/** With --json, standard output belongs to the lines, and what is for people goes to the other. */
function tell({ out, err }: Context, outcome: Outcome, json: boolean): void {
  const say = json ? err : out;
  const { totals, duplicates, stopped, lines, summary } = outcome;
  const { jobs, errors, skipped, compared, price } = totals;
  const files = jobs + errors + skipped + totals.books.length + totals.learned.length;
  say(
    `${count(files, "file")}: ${count(jobs, "job")}, ${errors} without a result, ${skipped} left out by filters\n`,
  );
  if (compared > 0) {
    say(
      `Price of ${count(compared, "job")} of which before and now are known: ${dollars(price.before)} before, ${dollars(price.now)} now (${percent(price.now - price.before, price.before)})\n`,
    );
  }
  for (const { item, by } of totals.moved.slice(0, 10))
    say(`  ${item} moves it by ${dollars(by)}\n`);
  say(
    `Checks that newly fail: ${totals.newlyFailing} in ${count(totals.jobsNewlyFailing, "job")}; quotes expired: ${totals.expired} in ${count(totals.jobsExpired, "job")}\n`,
  );
  const { unpriced, lacking, failingUnknown } = totals;
  list(err, `${count(totals.failed.count, "file")} without a result:`, totals.failed);
  list(err, `The old price of ${count(unpriced.count, "job")} is not known:`, unpriced);
  if (failingUnknown > 0) {
    err(
      `In ${count(totals.jobsFailingUnknown, "job")} without old figures ${count(failingUnknown, "check")} fail; whether they failed before is not known.\n`,
    );
  }
  list(err, `The new office book lacks items of ${count(lacking.count, "job")}:`, lacking);
  if (totals.books.length > 0) {
    say(`Left out, being office books: ${totals.books.join(", ")}\n`);
  }
  if (totals.learned.length > 0) {
    say(`Left out, being workbooks of learned rates: ${totals.learned.join(", ")}\n`);
  }
  tellBuilt(say, err, totals.built);
  if (totals.jobsInError > 0) {
    err(
      `${count(totals.jobsInError, "job")} with cells in error: the bid does not stand. Each line of the results names where they begin, under "inError".\n`,
    );
  }
  for (const { job, files: same } of duplicates) {
    err(`job number ${job} stands in ${same.join(", ")}: only the first counts in the totals\n`);
  }
  if (totals.judged > 0) {
    say(
      `A second evaluator agreed on all of the ${count(totals.judged, "job")} that it was given.\n`,
    );
  }
  if (stopped !== undefined) {
    err(
      `Stopped after ${stopped.done} of ${stopped.of} files.${lines === undefined ? "" : ` The results so far are kept in ${lines}; the same command with --resume goes on.`}\n`,
    );
  }
  if (summary !== undefined) say(`Written: ${summary}\n`);
  if (lines !== undefined) say(`Line by line: ${lines}\n`);
}

/** Built jobs against what they came to: as bid, and as they would be bid now. */
function tellBuilt(say: Context["out"], err: Context["err"], built: BuiltTotals): void {
  if (built.rows === 0) return;
  const { compared, overBid, overNow, withinBid, withinNow, foretold, withinFifth } = built;
  if (overBid !== undefined && overNow !== undefined) {
    say(
      `Cost of ${count(compared, "built job")} told whole came out ${over(overBid)} the bid, and ${over(overNow)} what would be bid now (middle one); within cost and contingency: ${withinBid} as bid, ${withinNow} now\n`,
    );
  }
  if (foretold > 0) {
    say(
      `With contingency for P80 of the office's own jobs ${withinFifth} of ${foretold} would have stayed within${foretold < fewForetold ? ", too few to tell whether P80 holds" : ""}\n`,
    );
  }
  list(err, `${count(built.partial.count, "built job")} not compared:`, built.partial);
}

const over = (share: number) =>
  `${(Math.abs(share) * 100).toFixed(1)}% ${share < 0 ? "under" : "over"}`;

/** Fewer than these tell no share, as on sheet Calibration of learned rates. */
const fewForetold = 5;

function list(err: Context["err"], heading: string, { count: all, first }: Told): void {
  if (all === 0) return;
  const more =
    all > first.length ? [`and ${all - first.length} more, in the lines of the results`] : [];
  err(`${[heading, ...first, ...more].join("\n  ")}\n`);
}

const count = (value: number, thing: string) =>
  `${value.toLocaleString("en-US")} ${thing}${value === 1 ? "" : "s"}`;

const dollars = (value: number) =>
  `${value < 0 ? "-" : ""}$${Math.abs(value).toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;

const percent = (change: number, of: number) =>
  of === 0 ? "no share" : `${change < 0 ? "-" : "+"}${Math.abs((change / of) * 100).toFixed(1)}%`;

const collected = (one: string, others: readonly string[]) => [...others, one];

function whole(written: string): number {
  if (/^\d{1,6}$/.test(written)) return Number(written);
  throw new InvalidArgumentError("It must be a whole number from 0.");
}
