import { stat } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { Command } from "commander";
import { auditWorkbook } from "../audit/audit.js";
import type { Finding } from "../audit/finding.js";
import { withPath } from "../audit/index.js";
import { readOfficeBook } from "../book/read.js";
import { starterBook } from "../book/starter.js";
import { RillbookError } from "../errors.js";
import { newestTemplate, rawJob } from "../job/read.js";
import type { JobRecord } from "../job/record.js";
import { recordText } from "../job/save.js";
import { validateJob } from "../job/validate.js";
import { changeFile } from "../output/change.js";
import { mustEndRight } from "../output/judge.js";
import { type Confirmed, takeAnew } from "../take/anew.js";
import { type Into, type Taken, takeWorkbook } from "../take/take.js";
import { modelOf } from "../template/models.js";
import { layoutOf } from "../template/office-layout.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import { pathFrom } from "./beside.js";
import { isWorkbookName } from "./bid-source.js";
import type { Context } from "./context.js";
import { doneToIt, wrongBesides } from "./not-as-written.js";
import { entryLine, takerOf, unnamedLine } from "./trail-options.js";

interface Options {
  readonly by?: string;
  readonly note?: string;
  readonly output?: string;
  readonly json?: true;
  readonly template?: string;
  readonly office?: string;
}

/** `rillbook take`: the inputs of an edited workbook become a job record again. */
export function takeCommand(context: Context): Command {
  return new Command("take")
    .description("take the inputs of an edited workbook back into a job record, with its trail")
    .argument("<workbook>", "workbook that rillbook wrote and somebody edited (.xlsx)")
    .option(
      "--by <who>",
      "who made the changes (default: who was filled in with them, as the one who walked or chose; else nobody is named)",
    )
    .option(
      "-o, --output <job>",
      "job record: an existing one takes the changes in; else a new one is made (default: the workbook's name with .json)",
    )
    .option("--note <text>", "why, for each entry of the trail")
    .option(
      "--template <name>",
      "of a workbook that lost its custom properties and has no record: its template, by name; a new record and trail are begun",
    )
    .option("--office <file>", "with --template: the office book that it was made with")
    .option("--json", "the new entries and what was found, as JSON")
    .addHelpText(
      "after",
      '\nExample:\n  rillbook take hillside.xlsx -o hillside.json --by "A. Estimator" --note "changes of the meeting"\n\nExit status 1: taken in, but the workbook was changed in more than its inputs; that is listed and not taken in.',
    )
    .action(async (file: string, options: Options) => {
      const who = takerOf(options);
      const content = await readWorkbookFile(file, { look: true });
      const target = options.output ?? `${file.replace(/\.xls[xm]$/i, "")}.json`;
      const confirmed = await confirmedBy(options, target, context);
      const change = (old: string | undefined) => {
        if (confirmed !== undefined) mustBeNone(target, old);
        const into = recordAt(target, old, context);
        const taker = { ...who, time: new Date().toISOString() };
        const taken =
          confirmed === undefined
            ? takeWorkbook(content, context.templates, file, taker, into)
            : takeAnew(content, context.templates, file, taker, confirmed);
        // changes go into a record that is there only where it is named
        if (old !== undefined && options.output === undefined) mustBeTaken(taken, target);
        const same = taken.entries.length === 0 && taken.before !== undefined;
        return { content: same && old !== undefined ? old : recordText(taken.job), result: taken };
      };
      const read = [file, ...(options.office === undefined ? [] : [options.office])];
      const taken = await changeFile(target, change, read);
      const { job, entries, before } = taken;
      const findings = withPath(taken.findings, file);
      const more = await foundBesides(content, context, file, findings);
      context.status = findings.length + more.length > 0 ? 1 : 0;
      if (options.json) {
        const again = before === undefined ? {} : { takenBefore: before };
        context.json({ written: target, entries, ...again, findings }, 2);
        return;
      }
      for (const entry of entries) context.out(entryLine(entry));
      context.err(unnamedLine(entries));
      context.out(`${resultSaid(file, target, entries.length, before)}\n`);
      context.err(await bookNotThere(job, target));
      for (const finding of findings) context.err(`not taken in: ${inWords(finding)}\n`);
      if (more.length > 0) context.err(`not taken in: ${wrongBesides(file, more)}`);
    });
}

/** What the audit finds wrong besides what take looks for, such as lines hidden on a page that is handed out. */
async function foundBesides(
  content: WorkbookContent,
  { templates }: Context,
  file: string,
  findings: readonly Finding[],
): Promise<readonly Finding[]> {
  const told = new Set(findings.map(({ code, where }) => `${code} ${where}`));
  const audit = await auditWorkbook(content, templates, { file });
  return doneToIt(audit.findings, "wrong").filter(
    ({ code, where }) => !told.has(`${code} ${where}`),
  );
}

/** A record looks for its office book from its own folder on, wherever the workbook lay. */
async function bookNotThere({ office }: JobRecord, target: string): Promise<string> {
  if (office === undefined) return "";
  const path = resolve(dirname(target), office);
  if ((await stat(path).catch(() => undefined)) !== undefined) return "";
  return `The record names the office book ${office}, and there is none at ${path}. Put the record where its book is, or give the book where it lies: rillbook bid ${target} -o <new workbook> --office <file>.\n`;
}

/** What the options say of a workbook that no longer says it; undefined without them. */
async function confirmedBy(
  { template, office }: Options,
  target: string,
  { templates }: Context,
): Promise<Confirmed | undefined> {
  if (template === undefined && office === undefined) return undefined;
  if (template === undefined) {
    throw new RillbookError(
      "options-missing",
      "--office goes with --template, for a workbook that lost its custom properties: any other names its office book itself. Leave it out, or add --template <name>.",
    );
  }
  if (office === undefined) return { template, book: starterBook };
  const book = await readOfficeBook(
    office,
    layoutOf(newestTemplate(template, templates, "--template")),
  );
  return { template, office: pathFrom(target, office), book: () => book };
}

/** What is begun anew has no place in a record that has a trail of its own. */
function mustBeNone(target: string, old: string | undefined): void {
  if (old === undefined) return;
  throw new RillbookError(
    "file-exists",
    `${target} exists already, and --template makes a new record. Name a new file; or leave --template out to take the changes into ${target}.`,
  );
}

/** A workbook's name for the record: said here, since what reads records would only send back to this command. */
const noRecordName = (target: string): RillbookError =>
  new RillbookError(
    "output-kind",
    `${target} would be the job record that the changes go into, whose name must end in .json. Give -o ${target.replace(/\.xls[xm]$/i, ".json")}; a new one is made where there is none.`,
  );

/** The record that the changes go into; undefined where it is to be made. */
function recordAt(
  target: string,
  old: string | undefined,
  { templates }: Context,
): Into | undefined {
  if (isWorkbookName(target)) throw noRecordName(target);
  if (old === undefined) {
    mustEndRight(target, "record");
    return undefined;
  }
  const raw = rawJob(old, templates, target);
  return {
    record: validateJob(modelOf(raw.template, raw.units), raw.record, target),
    file: target,
  };
}

/** A record beside the workbook that has all of its changes already may stay as it is; any other must be named. */
function mustBeTaken({ entries, before }: Taken, target: string): void {
  if (entries.length === 0 && before !== undefined) return;
  throw new RillbookError(
    "file-exists",
    `${target} exists already and is left as it is. To bring the changes into it, give -o ${target}; or name another file.`,
  );
}

/** What became of the record: the changes that it took in now, and those that it had. */
function resultSaid(file: string, target: string, count: number, before?: number): string {
  const changes = (of: number) => (of === 1 ? "1 change" : `${of} changes`);
  if (count === 0 && before === 0) {
    return `Nothing to take in: no input was changed in ${file} since it was written, and ${target} has gone on since. It stays as it is.`;
  }
  if (count === 0 && before !== undefined) {
    const stand = before === 1 ? "its change stands" : `its ${changes(before)} stand`;
    return `Already taken in: ${stand} in ${target}, which stays as it is.`;
  }
  const had = before ? `; ${changes(before)} taken in before` : "";
  return `Written: ${target} (${count === 0 ? "no input was changed" : changes(count)}${had})`;
}

function inWords({ where, name, found, expected, advice }: Finding): string {
  const what = name === undefined || where.includes(name) ? where : `${name} (${where})`;
  return `${what}: ${found}; expected ${expected}. ${advice}`;
}
