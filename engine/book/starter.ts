import type { BookLayout, BookRow, BookTable } from "../template/book-layout.js";
import { layoutOf } from "../template/office-layout.js";
import type { Template } from "../template/template.js";
import type { UnitSystem } from "../units/quantity.js";
import { bookMark } from "./mark.js";
import type { OfficeBook } from "./office-book.js";

/** No office's book: its day says so. */
const starterDay = "2000-01-01";

const starters = new WeakMap<Template, Partial<Record<UnitSystem, OfficeBook>>>();

/**
 * The book that comes with a template, for jobs that name none: its own rules, and prices and rates that
 * are plainly placeholders.
 */
export function starterBook(template: Template, units: UnitSystem): OfficeBook {
  const known = starters.get(template) ?? {};
  starters.set(template, known);
  known[units] ??= madeFor(template, units);
  return known[units];
}

function madeFor(template: Template, units: UnitSystem): OfficeBook {
  const layout = layoutOf(template)(units);
  const tables = Object.fromEntries(layout.map((table) => [table.name, withoutGuides(table)]));
  const name = "Starter book (placeholders)";
  return {
    name,
    asOf: starterDay,
    about:
      "Came with the program: its costs and rates are placeholders. Write the office's own book.",
    mark: bookMark(name, starterDay, tables, units),
    ...(units === "us" ? {} : { units }),
    tables,
  };
}

/** The rows that a new book opens with, the words for people among them. */
export const starterRows = (layout: BookLayout): OfficeBook["tables"] =>
  Object.fromEntries(layout.map(({ name, starter = [] }) => [name, starter]));

/** The same as reading a new book would give them. */
function withoutGuides({ columns, starter = [] }: BookTable): BookRow[] {
  const guides = new Set(columns.flatMap(({ key, guide }) => (guide ? [key] : [])));
  return starter.map((row) =>
    Object.fromEntries(Object.entries(row).filter(([key]) => !guides.has(key))),
  );
}
