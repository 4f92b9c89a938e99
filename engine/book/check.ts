import { serialOf } from "../job/date.js";
import { JobError } from "../job/job-error.js";
import type { BookLayout, BookRow, LayoutOf } from "../template/book-layout.js";
import { type Taken, takenLine, takenText } from "../text/taken.js";
import { type UnitSystem, unitSystems } from "../units/quantity.js";
import type { RawCell } from "./cell.js";
import { checkTable, type PlaceholderRow } from "./check-table.js";
import { bookMark } from "./mark.js";
import type { OfficeBook } from "./office-book.js";
import type { RawBook } from "./raw-book.js";

const mostFaults = 40;

/** A book that is right, and what of it still stands in for the office's own values. */
export interface CheckedBook {
  readonly book: OfficeBook;
  readonly placeholders: readonly Placeholders[];
}

/** Rows of a table that are marked as placeholders, and where the first of them stands. */
export interface Placeholders {
  readonly sheet: string;
  readonly rows: number;
  readonly first: string;
  readonly table: string;
  readonly each: readonly PlaceholderRow[];
}

/** Checks a book against its layout. Throws JobError with all faults, each with its place. */
export function checkBook(raw: RawBook, layouts: BookLayout | LayoutOf, file: string): CheckedBook {
  const faults: string[] = [];
  const units = unitsOf(raw.units, faults);
  const layout = layoutIn(layouts, units);
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
  const placeholders: Placeholders[] = [];
  for (const table of layout) {
    const found = raw.tables[table.name];
    if (found === undefined && table.optional) continue;
    if (found === undefined) {
      faults.push(`The ${raw.where(table)} is missing: ${table.means} Add it.`);
      continue;
    }
    const looked = checkTable(table, found, raw.where(table), faults);
    tables[table.name] = looked.rows;
    const each = looked.placeholders;
    const [first] = each;
    if (first === undefined) continue;
    const { name, sheet } = table;
    placeholders.push({ sheet, rows: each.length, first: first.place, table: name, each });
  }
  if (faults.length > 0) {
    const more = faults.length - mostFaults;
    const shown = more > 0 ? [...faults.slice(0, mostFaults), `and ${more} more.`] : faults;
    throw new JobError("book-invalid", `The office book ${file} cannot be used:`, shown);
  }
  const book = {
    name,
    asOf,
    ...(about === "" ? {} : { about }),
    mark: bookMark(name, asOf, tables, units),
    ...(units === "us" ? {} : { units }),
    tables,
  };
  return { book, placeholders };
}

/** The layout of a book that is kept in these units. */
export const layoutIn = (layout: BookLayout | LayoutOf, units: UnitSystem): BookLayout =>
  typeof layout === "function" ? layout(units) : layout;

function unitsOf(given: RawCell, faults: string[]): UnitSystem {
  if (given === undefined || given === null || given === "") return "us";
  const found = unitSystems.find((one) => one === String(given).trim().toLowerCase());
  if (found === undefined) {
    faults.push(
      `About: the units of the book are ${JSON.stringify(given)}, but must be us or si. Correct them.`,
    );
  }
  return found ?? "us";
}
