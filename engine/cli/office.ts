import { Command } from "commander";
import type { OfficeBook } from "../book/office-book.js";
import { readOfficeBook } from "../book/read.js";
import { writeOfficeBook } from "../book/write.js";
import { RillbookError } from "../errors.js";
import { newestTemplate } from "../job/read.js";
import { mustBeNew, writeNew as writeNewFile } from "../output/write.js";
import type { BookLayout } from "../template/book-layout.js";
import type { Context } from "./context.js";

interface Options {
  readonly template?: string;
  readonly new?: true;
  readonly from?: string;
  readonly json?: true;
}

/** `rillbook office`: checks an office book, or writes a new one. */
export function officeCommand(context: Context): Command {
  return new Command("office")
    .description("check an office book, or write a new one with the codes that a template asks for")
    .argument("<file>", "office book (.xlsx or .json); with --new the .xlsx to write")
    .option("--new", "write a new office book: fill in costs, suppliers and dates there")
    .option("--from <book>", "with --new: the rows of this book, instead of blank costs")
    .option("--template <name>", `template (default: ${context.templates[0]?.name ?? "none"})`)
    .option("--json", "tell the result as JSON")
    .addHelpText(
      "after",
      "\nExamples:\n  rillbook office --new prices.xlsx\n  rillbook office prices.xlsx",
    )
    .action(async (file: string, options: Options) => {
      const layout = layoutOf(context, options.template);
      if (options.new) await writeNew(context, file, layout, options);
      else tell(context, file, await readOfficeBook(file, layout), options);
    });
}

function layoutOf({ templates }: Context, name: string | undefined): BookLayout {
  return newestTemplate(name, templates, "--template").office ?? [];
}

async function writeNew(
  context: Context,
  file: string,
  layout: BookLayout,
  { from }: Options,
): Promise<void> {
  if (!file.toLowerCase().endsWith(".xlsx")) {
    throw new RillbookError(
      "book-kind",
      `${file} must end in .xlsx: new office books are workbooks. Name it so.`,
    );
  }
  await mustBeNew(file);
  const book = from === undefined ? starterBook(layout) : await readOfficeBook(from, layout);
  const inputs = from === undefined ? [] : [from];
  const plan = { kind: "book", inputs } as const;
  await writeNewFile(file, plan, await writeOfficeBook(book, layout));
  const next =
    from === undefined
      ? `Fill in the costs, suppliers and dates, then: rillbook office ${file}`
      : `Its rows are those of ${from}.`;
  context.out(`Written: ${file}\n${next}\n`);
}

function starterBook(layout: BookLayout): Omit<OfficeBook, "mark"> {
  const tables = Object.fromEntries(layout.map(({ name, starter = [] }) => [name, starter]));
  const about =
    "Name this book, give the day it is as of, fill in what is blank, and take out rows that the office does not use.";
  return { name: "Office book", asOf: "", about, tables };
}

function tell(context: Context, file: string, book: OfficeBook, { json }: Options): void {
  const rows = Object.fromEntries(
    Object.entries(book.tables).map(([name, table]) => [name, table.length]),
  );
  const { name, asOf, mark, about } = book;
  if (json) {
    context.json({ file, name, asOf, about: about ?? null, mark, rows }, 2);
    return;
  }
  context.out(`${name}, as of ${asOf}\n`);
  if (about !== undefined) context.out(`${about}\n`);
  for (const [table, count] of Object.entries(rows)) context.out(`${table}: ${count} rows\n`);
  context.out(`Every row is right. Mark: ${mark}\n`);
}
