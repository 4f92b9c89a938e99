import { Command } from "commander";
import { identityOf } from "../book/identity-of.js";
import { jobOf } from "../book/load-job.js";
import type { OfficeBook } from "../book/office-book.js";
import { RillbookError } from "../errors.js";
import type { Value } from "../formula/value.js";
import { serialOf, today } from "../job/date.js";
import { failedChecks } from "../job/failed-checks.js";
import {
  type Collected,
  collect,
  type Evidence,
  type Exclusion,
  evidenceOf,
  exclusionsIn,
  isLearning,
} from "../learn/index.js";
import { outputTo } from "../output/write.js";
import { findFiles, tradeOf } from "../rerun/index.js";
import { reopened } from "../take/reopen.js";
import { editsAgainst } from "../take/untaken.js";
import { type Model, valueNamed } from "../template/model.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import { writeWorkbook } from "../workbook/write/write.js";
import type { Context } from "./context.js";
import { failedLines } from "./failed-lines.js";
import { counted, type LearnOptions, together } from "./learn-options.js";
import { takeRates } from "./learn-take.js";
import { withJudge } from "./with-judge.js";

const help = `
A folder is searched with all below it, for job records (.json) and workbooks (.xlsx). Those count whose state is
built, with their last day and, task by task, the quantity done and the man-hours taken; all others are told with
the reason why not. Old files are never changed. The workbook that is written holds every task of every built job,
what each rate of the office book came to, with its interval, and how that is calculated, as live formulas.

Nothing goes into an office book by itself: say yes under "Take it" for the rates that the office takes, and under "Take
the overrun" for P50 and P80 of how far jobs went over their bids. --take then writes a new office book in which those
rows alone are changed, each with the jobs that it comes from.

Exit status: 0 done; 1 the workbook is written, and a check of it does not hold; 2 bad input or usage.

Examples:
  rillbook learn jobs/ --office office.xlsx -o rates.xlsx
  rillbook learn jobs/ --office office.xlsx --excluded-in rates-2026.xlsx -o rates.xlsx
  rillbook learn --take rates.xlsx --into office.xlsx -o office-2027.xlsx`;

/** `rillbook learn`: production rates from built jobs, and into a new office book what a person takes of them. */
export function learnCommand(context: Context): Command {
  return new Command("learn")
    .description(
      "learn production rates from built jobs; put those that are marked into a new office book",
    )
    .argument("[files...]", "job records, workbooks, folders or patterns")
    .option("--office <file>", "the office book whose rates the jobs are held against")
    .option("-o, --output <xlsx>", "workbook to write; with --take, the new office book")
    .option("--as-of <day>", "the day on which jobs are as old as they are (default: today)")
    .option(
      "--excluded-in <rates>",
      "leave out again what this older workbook leaves out, with its reasons",
    )
    .option("--take <rates>", "take the rates marked in this workbook of learned rates")
    .option("--into <file>", "with --take: the office book that the new one is made from")
    .option("--json", "tell the result as JSON")
    .addHelpText("after", help)
    .action(async (files: string[], options: LearnOptions) => {
      if (options.take !== undefined) await takeRates(context, files, options, options.take);
      else await learn(context, files, options);
    });
}

async function learn(context: Context, named: string[], options: LearnOptions): Promise<void> {
  const { office, output, asOf = today(), into, excludedIn } = options;
  if (into !== undefined) throw together("--into goes with --take.");
  if (named.length === 0) throw together("Name the jobs: a folder, files or a pattern.");
  if (office === undefined) {
    throw new RillbookError(
      "office-missing",
      "Name the office book whose rates the jobs are held against: --office <file>.",
    );
  }
  if (output === undefined) {
    throw new RillbookError("output-missing", "Name the workbook to write, as in -o rates.xlsx.");
  }
  if (serialOf(asOf) === undefined) {
    throw new RillbookError(
      "date-invalid",
      `--as-of is ${JSON.stringify(asOf)}, but must be a date like 2027-01-15.`,
    );
  }
  const target = await outputTo(output, {
    kind: "bid",
    inputs: [office, ...(excludedIn === undefined ? [] : [excludedIn])],
    edits: editsAgainst(context.templates),
    templates: context.templates.filter(isLearning).map(({ name }) => name),
  });
  const trade = tradeOf(context.templates);
  const book = await trade.readBook(office);
  const learning = context.templates.filter(isLearning);
  const condition = learning[0]?.learns.condition ?? "";
  const files = await findFiles(
    named,
    [output, office, excludedIn].filter((one) => one !== undefined),
  );
  const collected = await collect(files, trade, book, condition);
  const exclusions = excludedIn === undefined ? [] : await exclusionsOf(context, excludedIn);
  const { jobs, decided } = collected;
  // where nothing comes of it, the reasons are all that there is to say
  if (jobs.length === 0) {
    for (const line of passedOverSaid(collected)) context.err(`${line}\n`);
  }
  const evidence = evidenceOf(jobs, decided, book, learning, asOf, exclusions);
  const { model, values } = await written(context, evidence, book, target);
  tell(context, options, { collected, evidence, model, values, output });
}

/** The rows that an older workbook of learned rates leaves out. What its formulas show is not asked for. */
async function exclusionsOf({ templates }: Context, file: string): Promise<Exclusion[]> {
  const content = await readWorkbookFile(file);
  const { model, given } = reopened(content, templates, file, { time: new Date().toISOString() });
  return exclusionsIn(model, given);
}

/** Calculated by both evaluators; the file takes its name only when they agree. */
async function written(
  context: Context,
  { record, model }: Evidence,
  book: OfficeBook,
  target: Awaited<ReturnType<typeof outputTo>>,
): Promise<{ model: Model; values: readonly Value[] }> {
  const loaded = await jobOf(JSON.stringify(record), context.templates, record.job, book);
  return withJudge(context, async (calculate) => {
    const { values, agreed } = calculate(model, loaded.given);
    const bytes = await writeWorkbook(model, values, identityOf(loaded));
    await agreed;
    await target.write(bytes);
    return { model, values };
  });
}

interface Learned {
  readonly collected: Collected;
  readonly evidence: Evidence;
  readonly model: Model;
  readonly values: readonly Value[];
  readonly output: string;
}

function tell(context: Context, { json }: LearnOptions, learned: Learned): void {
  const { collected, evidence, model, values, output } = learned;
  const { jobs, rows, tooMany, unknown, decidedLeftOut } = evidence;
  const failed = failedChecks(model, values);
  context.status = failed.some(({ level }) => level === "must") ? 1 : 0;
  const { headline } = model.template;
  const figure = (name: string) => valueNamed(model, values, name);
  const half = jobs.reduce((sum, one) => sum + one.half, 0);
  if (json) {
    context.json(
      {
        ...{ written: output, jobs: jobs.map(({ job, file }) => ({ job, file })), rows },
        headline: Object.fromEntries(headline.map((name) => [name, figure(name)])),
        ...{ passedOver: collected.passedOver, tasksToldByHalf: half, noRateInBook: unknown },
        ...{ excluded: evidence.carried },
        decided: collected.decided.length,
        ...{ decidedLeftOut, decidedUnlike: collected.unlike },
        tooMany: tooMany.map(({ job, file }) => ({ job, file })),
        failed: failed.map(({ cell, level, message }) => ({ name: cell.id, level, message })),
      },
      2,
    );
    return;
  }
  context.out(`${counted(jobs.length, "built job")}, ${counted(rows, "row")} of tasks.\n`);
  for (const name of headline.slice(2)) {
    const cell = model.byId.get(name);
    context.out(`${cell?.declaration.label ?? name}: ${String(figure(name))}\n`);
  }
  context.out(`Written: ${output}\n`);
  tellExcluded(context, evidence);
  for (const line of passedOverSaid(collected)) context.err(`${line}\n`);
  if (half > 0) {
    context.err(
      `left out: ${counted(half, "task")} of built jobs with hours or quantity alone, or zero\n`,
    );
  }
  if (unknown.length > 0) {
    context.err(
      `left out: tasks whose rate the office book does not have: ${unknown.join(", ")}\n`,
    );
  }
  if (tooMany.length > 0) {
    context.err(
      `left out: the oldest ${counted(tooMany.length, "job")}, since the largest workbook has no room: ${tooMany.map(({ job }) => job).join(", ")}\n`,
    );
  }
  if (collected.unlike.length > 0) {
    context.err(
      `left out of won and lost: jobs of which several files tell another outcome or price: ${collected.unlike.join(", ")}\n`,
    );
  }
  if (decidedLeftOut > 0) {
    context.err(
      `left out of won and lost: the oldest ${counted(decidedLeftOut, "bid")}, for want of room\n`,
    );
  }
  for (const line of failedLines(failed)) context.err(`${line}\n`);
}

function tellExcluded({ out, err }: Context, { carried }: Evidence): void {
  const { kept, changed, gone } = carried;
  const named = (list: readonly Exclusion[]) =>
    list.map(({ job, task, reason }) => `${task} of ${job} (${reason})`).join(", ");
  if (kept.length > 0) out(`Left out again: ${counted(kept.length, "row")}: ${named(kept)}\n`);
  if (changed.length > 0) {
    err(`counts again, since its quantity or hours changed; look at it anew: ${named(changed)}\n`);
  }
  if (gone.length > 0) err(`not among the jobs any more, and was left out: ${named(gone)}\n`);
}

/** Files by the reason why they gave no evidence: each with its name. */
function passedOverSaid({ passedOver }: Collected): string[] {
  const byReason = new Map<string, string[]>();
  for (const { file, because } of passedOver) {
    byReason.set(because, [...(byReason.get(because) ?? []), file]);
  }
  return [...byReason].map(
    ([because, files]) =>
      `left out: ${counted(files.length, "file")}, ${because}: ${files.join(", ")}`,
  );
}
