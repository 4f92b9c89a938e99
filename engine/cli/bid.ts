import { basename, extname, resolve } from "node:path";
import { Command } from "commander";
import { RillbookError } from "../errors.js";
import { readText } from "../files.js";
import type { Value } from "../formula/value.js";
import { rootErrors } from "../job/errors-in-cells.js";
import { failedChecks } from "../job/failed-checks.js";
import { faultyInputInWords, faultyInputs, faultyInputsAsJson } from "../job/faulty-inputs.js";
import { missingInputs } from "../job/missing.js";
import { mustFitWorkbook } from "../job/trail/longest.js";
import { changeBytes } from "../output/change.js";
import { outputTo } from "../output/write.js";
import { editsAgainst } from "../take/untaken.js";
import type { Model } from "../template/model.js";
import { withPicturesFrom, withPicturesOver } from "../workbook/pictures/carry.js";
import { withLogo } from "../workbook/pictures/logo.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { readWorkbook } from "../workbook/read/read.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import type { WriteWorkbook } from "../workbook/write/write.js";
import {
  type BidSource,
  isWorkbookName,
  type SourceOptions,
  sourceFromRecord,
  sourceFromWorkbook,
} from "./bid-source.js";
import type { Context } from "./context.js";
import { errorsAsJson, errorsTold } from "./errors-told.js";
import { failedLines } from "./failed-lines.js";
import { missingLines } from "./missing-lines.js";
import { tellStatus } from "./status-told.js";
import { entryLine, takerOf, unnamedLine } from "./trail-options.js";
import { type Calculate, withJudge } from "./with-judge.js";

interface Options extends SourceOptions {
  readonly output?: string;
  readonly json?: true;
  readonly exceljs?: true;
}

/** `rillbook bid`: a job record, or a workbook that was filled in, becomes a bid. */
export function bidCommand(context: Context): Command {
  return new Command("bid")
    .description("write the bid of a job as a workbook of live formulas")
    .argument("<job>", "job record (.json), or workbook that was filled in (.xlsx)")
    .option("-o, --output <xlsx>", "workbook to write (default: a workbook given is written again)")
    .option(
      "--office <file>",
      "take prices and rules from this office book, instead of the one the job names",
    )
    .option(
      "--refresh-prices",
      "of a workbook: take them anew from the office book it names; without, it keeps what it carries (a record always takes them anew)",
    )
    .option(
      "--by <who>",
      "who filled a workbook in (default: who was filled in with the changes, as the one who walked or chose; else nobody is named)",
    )
    .option("--note <text>", "why, for each entry of the trail")
    .option(
      "--exceljs",
      "let the library exceljs write the workbook: the same file by another hand, in more time",
    )
    .option("--json", "tell the result as JSON")
    .addHelpText(
      "after",
      "\nExample:\n  rillbook bid garden-corner.json -o garden-corner.xlsx\n  rillbook bid yard.xlsx\n\nWhat is still missing stays blank: the bid is written, does not stand, and says what to fill in (status 1).",
    )
    .action(async (file: string, given: Options) => {
      // a workbook written over itself is written again in place, where nothing of it may be lost
      const { output: named, ...others } = given;
      const isSame =
        named !== undefined && isWorkbookName(file) && resolve(named) === resolve(file);
      const options: Options = isSame ? others : given;
      const { output } = options;
      if (options.refreshPrices && !isWorkbookName(file)) {
        throw new RillbookError(
          "usage",
          `${file} is a job record, whose bid takes prices and rules anew each time. Leave --refresh-prices out; --office <file> takes another book than it names.`,
        );
      }
      if (isWorkbookName(file)) {
        await withJudge(context, (judge) => bidFromWorkbook(context, file, options, judge));
      } else if (output !== undefined) {
        const named = { ...options, output };
        await withJudge(context, (judge) => bidFromRecord(context, file, named, judge));
      } else {
        // a slip in its name is told as that
        await readText(file, "job record");
        throw new RillbookError(
          "output-missing",
          `${file} is a job record: name the workbook to write, as in -o ${basename(file, extname(file))}.xlsx.`,
        );
      }
    });
}

async function bidFromRecord(
  context: Context,
  file: string,
  options: Options & { readonly output: string },
  calculate: Calculate,
): Promise<void> {
  const source = await sourceFromRecord(file, context.templates, options.office);
  await written(context, source, file, options, calculate);
}

/** Into another file, or in place, where nothing but inputs was changed in it. */
async function bidFromWorkbook(
  context: Context,
  file: string,
  options: Options,
  calculate: Calculate,
): Promise<void> {
  const who = { ...options, ...takerOf(options) };
  const { output = file, json } = options;
  if (options.output !== undefined) {
    const content = await readWorkbookFile(file);
    const source = await sourceFromWorkbook(content, file, context.templates, who);
    await written(context, source, file, { ...options, output }, calculate);
    return;
  }
  const { source, values } = await changeBytes(
    file,
    "bid",
    async (old) => {
      if (old === undefined) throw new RillbookError("file-unreadable", `${file} does not exist.`);
      const content = readWorkbook(old);
      const source = await sourceFromWorkbook(content, file, context.templates, who);
      mustKeepAll(context, content, file, source);
      const { values, bytes } = await made(source, file, calculate, options);
      const pictured = await withPicturesOver(file, bytes, logoFrom(source));
      const written = withLogo(pictured, source.model, source.logo);
      return { content: written, result: { source, values } };
    },
    options.office === undefined ? [] : [options.office],
  );
  tell(context, source, values, file, json);
}

/** In place nothing may be lost: formulas, prices and names that were changed, and a seal. */
function mustKeepAll(
  { templates }: Context,
  content: WorkbookContent,
  file: string,
  { model, given, identity: { trail = [] } }: BidSource,
): void {
  const { besides, untold, sealed } = editsAgainst(templates, { model, values: given, trail })(
    content,
  );
  const lost = sealed
    ? "it carries a seal, which a new bid would not have"
    : untold !== undefined
      ? `what was changed in it cannot be told: ${untold}`
      : besides.length > 0
        ? `more than its inputs was changed in it, which a new bid would not keep: ${besides.slice(0, 5).join(", ")}`
        : undefined;
  if (lost === undefined) return;
  throw new RillbookError(
    "output-edited",
    `${file} is left as it is: ${lost}. Write the bid to another file with -o.`,
  );
}

/** A bid whose office book was not read keeps the logo that it has. */
const logoFrom = ({ bookRead }: BidSource) => (bookRead ? "book" : "workbook");

async function made(
  { model, given, identity }: BidSource,
  file: string,
  calculate: Calculate,
  options: Pick<Options, "exceljs">,
) {
  mustFitWorkbook(identity.trail ?? [], file);
  const { values, agreed } = calculate(model, given);
  const write = await writerOf(options);
  const bytes = await write(model, values, identity);
  await agreed;
  return { values, bytes };
}

/** exceljs is read only where it writes: it takes longer to read than a bid to write. */
async function writerOf({ exceljs }: Pick<Options, "exceljs">): Promise<WriteWorkbook> {
  if (exceljs) return (await import("../workbook/write/exceljs/write.js")).writeThroughExceljs;
  return (await import("../workbook/write/write.js")).writeWorkbook;
}

async function written(
  context: Context,
  source: BidSource,
  file: string,
  options: Options & { readonly output: string },
  calculate: Calculate,
): Promise<void> {
  const { output: target, json } = options;
  const { model, given, identity, files, logo } = source;
  const known = { model, values: given, trail: identity.trail ?? [] };
  const edits = editsAgainst(context.templates, known);
  const templates = [model.template.name];
  const output = await outputTo(target, { kind: "bid", inputs: files, edits, templates });
  const { values, bytes } = await made(source, file, calculate, options);
  // those of the workbook it was filled in, else those that stand on the bid written over
  const pictured = isWorkbookName(file)
    ? withPicturesFrom(file, target, bytes, logoFrom(source))
    : withPicturesOver(target, bytes, logoFrom(source));
  await output.write(withLogo(await pictured, model, logo));
  tell(context, source, values, target, json);
}

/** The headline, what is missing, and what keeps the bid from standing. */
function tell(
  context: Context,
  source: BidSource,
  values: readonly Value[],
  target: string,
  json: true | undefined,
): void {
  const { model, entries, findings } = source;
  const failed = failedChecks(model, values);
  const errors = rootErrors(model, values);
  const missing = missingInputs(model, values);
  const faulty = faultyInputs(model, values);
  const sound = errors.length === 0 && failed.every(({ level }) => level !== "must");
  const stands = sound && missing.length === 0;
  context.status = stands && findings.length === 0 ? 0 : 1;
  const { headline } = model.template;
  if (json) {
    context.json(
      {
        written: target,
        stands,
        headline: Object.fromEntries(
          headline.map((name) => [name, jsonValue(model, values, name)]),
        ),
        missing: missing.map(({ id }) => id),
        ...(faulty.length === 0 ? {} : { faultyInputs: faultyInputsAsJson(faulty) }),
        failed: failed.map(({ cell, level, message }) => ({ name: cell.id, level, message })),
        errors: errorsAsJson(errors),
        ...(entries.length === 0 ? {} : { entries }),
        ...(findings.length === 0 ? {} : { findings }),
      },
      2,
    );
    return;
  }
  // first what all the rest may follow from
  for (const one of faulty) context.err(`${faultyInputInWords(one)}\n`);
  tellStatus(context, model, values, stands);
  for (const entry of entries) context.out(entryLine(entry));
  context.err(unnamedLine(entries));
  context.out(`Written: ${target}\n`);
  context.err(missingLines(missing));
  for (const line of [...errorsTold(errors), ...failedLines(failed)]) context.err(`${line}\n`);
  for (const line of findingLines(source)) context.err(`${line}\n`);
}

/** What was not taken in from a workbook; results that do not follow are but calculated again. */
function findingLines({ findings, bookRead }: Pick<BidSource, "findings" | "bookRead">): string[] {
  const isStale = ({ code }: BidSource["findings"][number]) => code === "value-stale";
  const others = findings.filter((one) => !isStale(one));
  const instead = bookRead ? "the office book's price stands" : "that one stands";
  const lines = others.map(({ where, found, code }) => {
    const now = code === "price-changed" ? `; ${instead} in the new bid` : "";
    return `not taken in: ${where}: ${found}${now}`;
  });
  const stale = findings.filter(isStale);
  const count = stale.reduce((sum, { names }) => sum + (names?.length ?? 1), 0);
  if (count === 0) return lines;
  const [results, were] = count === 1 ? ["1 result", "was"] : [`${count} results`, "were"];
  return [
    ...lines,
    `not taken in: ${results} in the workbook ${were} out of date: calculated again`,
  ];
}

function jsonValue(model: Model, values: readonly unknown[], name: string): unknown {
  const cell = model.byId.get(name);
  return cell === undefined ? null : { value: values[cell.index], unit: cell.unit.name };
}
