import { suggestion } from "../formula/suggest.js";
import { serialOf } from "../job/date.js";
import { JobError } from "../job/job-error.js";
import type { BookLayout, BookRow, BookTable } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import { type Taken, takenLine, takenText } from "../text/taken.js";
import { checkCell, type RawCell } from "./cell.js";
import { bookMark } from "./mark.js";
import type { OfficeBook } from "./office-book.js";

/** A row as it stands in a file, with the number that people find it by. */
export interface RawRow {
  readonly at: number;
  readonly cells: Readonly<Record<string, RawCell>>;
}

export interface RawTable {
  readonly rows: readonly RawRow[];
  /** The columns that the file has, for telling a missing column from a blank cell. */
  readonly columns?: readonly string[];
}

/** An office book as it stands in a file, before its rows are checked. */
export interface RawBook {
  readonly name: RawCell;
  readonly asOf: RawCell;
  readonly about: RawCell;
  readonly tables: Readonly<Record<string, RawTable | undefined>>;
  /** How a table is called in the file: `sheet Items`. */
  readonly where: (table: BookTable) => string;
}

const mostFaults = 40;

/** Checks a book against its layout. Throws JobError with all faults, each with its place. */
export function checkBook(raw: RawBook, layout: BookLayout, file: string): OfficeBook {
  const faults: string[] = [];
  const text = (given: RawCell, what: string, take: (text: string) => Taken): string => {
    const taken = take(typeof given === "string" ? given.trim() : "");
    if ("text" in taken) return taken.text;
    faults.push(`About: ${what} ${taken.trouble}`);
    return "";
  };
  const name = text(raw.name, "the name of the book", takenLine);
  if (name === "") {
    faults.push("About: the name of the book is missing. Say how the office calls it.");
  }
  const asOf = typeof raw.asOf === "string" ? raw.asOf : "";
  if (serialOf(asOf) === undefined) {
    faults.push(
      `About: the day the book is as of is ${JSON.stringify(raw.asOf ?? null)}, which is not a date. Type a date, such as 2026-05-31.`,
    );
  }
  const about = text(raw.about, "what it says about the book", takenText);
  const tables: Record<string, readonly BookRow[]> = {};
  for (const table of layout) {
    const found = raw.tables[table.name];
    if (found === undefined) {
      faults.push(`The ${raw.where(table)} is missing: ${table.means} Add it.`);
      continue;
    }
    tables[table.name] = checkTable(table, found, raw.where(table), faults);
  }
  if (faults.length > 0) {
    const more = faults.length - mostFaults;
    const shown = more > 0 ? [...faults.slice(0, mostFaults), `and ${more} more.`] : faults;
    throw new JobError("book-invalid", `The office book ${file} cannot be used:`, shown);
  }
  return {
    name,
    asOf,
    ...(about === "" ? {} : { about }),
    mark: bookMark(name, asOf, tables),
    tables,
  };
}

function checkTable(
  table: BookTable,
  raw: RawTable,
  where: string,
  faults: string[],
): readonly BookRow[] {
  const unfit = raw.columns === undefined ? [] : columnFaults(table, raw.columns, where);
  faults.push(...unfit);
  // without its columns every row would be reported
  if (unfit.length > 0) return [];
  const seen = new Map<string, number>();
  const rows: BookRow[] = [];
  for (const { at, cells } of raw.rows) {
    if (Object.values(cells).every(isBlank)) continue;
    const code = isBlank(cells.code) ? "" : `, code ${JSON.stringify(cells.code)}`;
    const place = `${where}, row ${at}${code}`;
    const row = checkRow(table, cells, place, faults);
    const known = String(row.code ?? "").toLowerCase();
    const before = seen.get(known);
    if (known !== "" && before !== undefined) {
      faults.push(
        `${place}: row ${before} has the same code, and upper and lower case count as one. Give each its own code, or take one out.`,
      );
    }
    if (!seen.has(known)) seen.set(known, at);
    rows.push(row);
  }
  return rows;
}

function columnFaults(table: BookTable, columns: readonly string[], where: string): string[] {
  const keys = table.columns.map(({ key }) => key);
  const missing = table.columns
    .filter(({ key, required }) => required && !columns.includes(key))
    .map(({ key, means }) => `${where}: the column "${key}" (${means}) is missing. Add it.`);
  const unknown = columns
    .filter((key) => !keys.includes(key))
    .map(
      (key) =>
        `${where}: the column "${key}" is not known.${suggestion(key, keys)} Rename it, or move it to a sheet of its own.`,
    );
  const twice = columns
    .filter((key, i) => columns.indexOf(key) !== i)
    .map((key) => `${where}: the column "${key}" stands twice. Take one out.`);
  return [...missing, ...unknown, ...twice];
}

function checkRow(
  table: BookTable,
  cells: Readonly<Record<string, RawCell>>,
  place: string,
  faults: string[],
): BookRow {
  const row: Record<string, InputValue> = {};
  let right = true;
  for (const column of table.columns) {
    const checked = checkCell(column, cells[column.key]);
    if ("fault" in checked) {
      faults.push(`${place}: ${column.key} ${checked.fault}`);
      right = false;
    } else if (checked.value !== undefined) row[column.key] = checked.value;
  }
  for (const key of Object.keys(cells)) {
    if (table.columns.some((column) => column.key === key)) continue;
    const keys = table.columns.map((column) => column.key);
    faults.push(
      `${place}: "${key}" is not known.${suggestion(key, keys)} Rename it or take it out.`,
    );
    right = false;
  }
  const broken = right ? table.rule?.(row) : undefined;
  if (broken !== undefined) faults.push(`${place}: ${broken}`);
  return row;
}

const isBlank = (cell: RawCell): boolean =>
  cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");
