import { Command, Option } from "commander";
import type { CheckedBook, Placeholders } from "../book/check.js";
import { codeOf } from "../book/fill.js";
import { fullBook } from "../book/full-book.js";
import { logoAt } from "../book/logo.js";
import type { OfficeBook } from "../book/office-book.js";
import { placeholdersUsed, type UsedRow } from "../book/placeholders-used.js";
import { checkedOfficeBook, readOfficeBook } from "../book/read.js";
import { starterRows } from "../book/starter.js";
import { writeOfficeBook } from "../book/write.js";
import { RillbookError } from "../errors.js";
import { calculateFast } from "../evaluate/calculate-fast.js";
import { today } from "../job/date.js";
import { newestTemplate } from "../job/read.js";
import { mustBeNew, writeNew as writeNewFile } from "../output/write.js";
import { type BookLayout, placeholderColumn } from "../template/book-layout.js";
import { layoutOf } from "../template/office-layout.js";
import type { Template } from "../template/template.js";
import { type UnitSystem, unitSystems } from "../units/quantity.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import { isWorkbookName, sourceFromRecord, sourceFromWorkbook } from "./bid-source.js";
import type { Context } from "./context.js";
import { templateNames } from "./which-template.js";

interface Options {
  readonly template?: string;
  readonly new?: true;
  readonly from?: string;
  readonly units?: UnitSystem;
  readonly json?: true;
  readonly for?: string;
}

/** `rillbook office`: checks an office book, or writes a new one. */
export function officeCommand(context: Context): Command {
  return new Command("office")
    .description(
      "check the office book, or write a new one: company, rules, prices, rates, weather",
    )
    .argument(
      "<file...>",
      "office book (.xlsx or .json), to be checked; with --new the .xlsx to write",
    )
    .option("--new", "write a new office book: fill in what is marked as a placeholder")
    .option("--from <book>", "with --new: what this book says, an old price book too")
    .addOption(
      new Option("--units <system>", "with --new: units of the book (default: us)").choices(
        unitSystems,
      ),
    )
    .option("--template <name>", `template (${templateNames(context)})`)
    .option("--for <job>", "name each placeholder that this job uses (record or workbook)")
    .option("--json", "tell the result as JSON")
    .addHelpText(
      "after",
      "\nExamples:\n  rillbook office --new office.xlsx\n  rillbook office check office.xlsx\n  rillbook office check office.xlsx --for yard.xlsx\n  rillbook office --new office.xlsx --from prices-2026.xlsx",
    )
    .action(async (words: readonly string[], options: Options) => {
      const file = fileIn(words);
      const template = newestTemplate(options.template, context.templates, "--template");
      if (options.new) await writeNew(context, file, template, options);
      else {
        const checked = await checkedOfficeBook(file, layoutOf(template));
        await mustHaveLogo(template, checked.book, file);
        const used = await usedBy(options.for, file, context.templates);
        tell(context, file, checked, layoutOf(template)(checked.book.units ?? "us"), options, used);
      }
    });
}

/** Where the book names a logo, it must be there: a bid would be refused. */
async function mustHaveLogo({ roles }: Template, { tables }: OfficeBook, file: string) {
  const rule = roles?.logo;
  const row = Object.values(tables)
    .flat()
    .find((one) => one.rule === rule);
  const named = rule === undefined ? undefined : row?.value;
  if (rule !== undefined && typeof named === "string") await logoAt(named, file, rule);
}

/** The placeholders of the book that a job uses, calculated under it; undefined where no job is named. */
async function usedBy(
  job: string | undefined,
  office: string,
  templates: readonly Template[],
): Promise<readonly UsedRow[] | undefined> {
  if (job === undefined) return undefined;
  const { model, given } = isWorkbookName(job)
    ? await sourceFromWorkbook(await readWorkbookFile(job), job, templates, { office })
    : await sourceFromRecord(job, templates, office);
  return placeholdersUsed(model, calculateFast(model, given));
}

/** `check` may stand before the file, for those who say what they do. */
function fileIn(words: readonly string[]): string {
  const [file, ...more] = words[0] === "check" ? words.slice(1) : words;
  if (file === undefined) {
    throw new RillbookError(
      "usage",
      "Name the office book to check, as in rillbook office check office.xlsx.",
    );
  }
  if (more.length === 0) return file;
  throw new RillbookError(
    "usage",
    `One office book at a time: ${words.join(", ")} are ${words.length}. Name one file.`,
  );
}

async function writeNew(
  context: Context,
  file: string,
  template: Template,
  { from, units }: Options,
): Promise<void> {
  if (!file.toLowerCase().endsWith(".xlsx")) {
    throw new RillbookError(
      "book-kind",
      `${file} must end in .xlsx: new office books are workbooks. Name it so.`,
    );
  }
  await mustBeNew(file);
  const layout = layoutOf(template);
  const old = from === undefined ? undefined : await readOfficeBook(from, layout);
  const system = units ?? old?.units ?? "us";
  mustBeIn(old, system, from);
  const book = old === undefined ? newBook(template, system) : fullBook(old, layout(system));
  const plan = { kind: "book", inputs: from === undefined ? [] : [from] } as const;
  await writeNewFile(file, plan, await writeOfficeBook(book, layout(system)));
  const next =
    from === undefined
      ? `Every row marked as a placeholder is waiting for the office's own values. Then: rillbook office check ${file}`
      : `It says what ${from} says; what that one lacks are the template's own rules.`;
  context.out(`Written: ${file}\n${next}\n`);
}

/** A book is written in the units it is kept in: prices per foot are no prices per meter. */
function mustBeIn(old: OfficeBook | undefined, system: UnitSystem, from = ""): void {
  const own = old === undefined ? system : (old.units ?? "us");
  if (own === system) return;
  throw new RillbookError(
    "book-units",
    `${from} is kept in ${own}, and its prices are for those units. Leave --units out, or write a new book in ${system} without --from.`,
  );
}

function newBook(template: Template, units: UnitSystem): Omit<OfficeBook, "mark"> {
  const layout = layoutOf(template)(units);
  const about =
    "Name this book. Put the office's own values in the rows marked as placeholders, clear the mark, and take out rows that the office does not use.";
  return { name: "Office book", asOf: today(), about, units, tables: starterRows(layout) };
}

function tell(
  context: Context,
  file: string,
  { book, placeholders }: CheckedBook,
  layout: BookLayout,
  { json, for: job }: Options,
  used: readonly UsedRow[] | undefined,
): void {
  const rows = Object.fromEntries(
    Object.entries(book.tables).map(([name, table]) => [name, table.length]),
  );
  const { name, asOf, mark, about, units = "us" } = book;
  if (json) {
    const blank = blankRows(book, layout);
    const told = placeholders.map(({ sheet, rows, first }) => ({ sheet, rows, first }));
    const inJob = used === undefined ? {} : { usedByJob: used };
    context.json(
      {
        ...{ file, name, asOf, units, about: about ?? null, mark, rows },
        ...{ placeholders: told, ...inJob, blank },
      },
      2,
    );
    return;
  }
  context.out(`${name}, as of ${asOf}\n`);
  if (about !== undefined) context.out(`${about}\n`);
  for (const [table, count] of Object.entries(rows)) context.out(`${table}: ${count} rows\n`);
  for (const { sheet, rows } of blankRows(book, layout))
    context.out(
      `Blank on sheet ${sheet}: ${rows.join(", ")}. What is blank is not said in a bid.\n`,
    );
  context.out(`Every row is right. Mark: ${mark}\n`);
  if (used !== undefined) context.out(usedSaid(placeholders, used, job ?? ""));
  if (placeholders.length > 0) context.out(placeholdersSaid(placeholders));
}

/** Each placeholder that a job uses, which is where its office begins. */
function usedSaid(sheets: readonly Placeholders[], used: readonly UsedRow[], job: string): string {
  const keys = new Set(used.map(({ from, code }) => `${from} ${code}`));
  const lines = sheets.flatMap(({ sheet, table, each }) =>
    each
      .filter(({ code = "" }) => keys.has(`${table} ${codeOf(code)}`))
      .map(({ place }) => `  sheet ${sheet}: ${place}\n`),
  );
  if (lines.length === 0) return `${job} uses no row that is a placeholder.\n`;
  const are = lines.length === 1 ? "1 placeholder" : `${lines.length} placeholders`;
  return `${job} uses ${are}; begin with ${lines.length === 1 ? "it" : "these"}:\n${lines.join("")}`;
}

/**
 * The rows of the template that say nothing: in tables whose rows are fixed and whose columns may all
 * stay blank, such as the clauses of a contract. Filled in or not, such a book is right.
 */
function blankRows(
  { tables }: OfficeBook,
  layout: BookLayout,
): { sheet: string; rows: string[] }[] {
  return layout.flatMap(({ name, sheet, fixed, columns, starter = [] }) => {
    const asked = columns.filter(({ key }) => key !== "row" && key !== placeholderColumn.key);
    if (!fixed || name === "rules" || asked.length === 0) return [];
    if (asked.some(({ required, guide }) => required === true || guide === true)) return [];
    const said = new Map((tables[name] ?? []).map((row) => [row.row, row]));
    const rows = starter
      .map(({ row }) => row)
      .filter((row) => asked.every(({ key }) => said.get(row)?.[key] === undefined));
    return rows.length === 0 ? [] : [{ sheet, rows: rows.map(String) }];
  });
}

function placeholdersSaid(sheets: readonly Placeholders[]): string {
  const rows = sheets.reduce((sum, one) => sum + one.rows, 0);
  const lines = sheets.map(
    ({ sheet, rows: own, first }) => `  sheet ${sheet}: ${own}, the first in ${first}`,
  );
  const are = rows === 1 ? "1 row is still a placeholder" : `${rows} rows are still placeholders`;
  return `${are}. Put the office's own values in, and clear the column Placeholder:\n${lines.join("\n")}\n`;
}
