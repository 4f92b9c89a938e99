import type { BookLayout, BookRow, BookTable } from "../template/book-layout.js";
import type { OfficeBook } from "./office-book.js";

/**
 * A book with all that a layout asks for, to be written: its own rows, with the words for people beside
 * its rules; the template's own where it lacks a rule or a table.
 */
export function fullBook(book: OfficeBook, layout: BookLayout): Omit<OfficeBook, "mark"> {
  const tables = layout.map(
    (table) => [table.name, rowsOf(table, book.tables[table.name])] as const,
  );
  return { ...book, tables: Object.fromEntries(tables) };
}

function rowsOf(
  { rules, fixed, key = ["code"], starter = [] }: BookTable,
  own: readonly BookRow[] | undefined,
) {
  if (own === undefined) return starter;
  if (rules === undefined && !fixed) return own;
  const name = key[0] as string;
  const byName = new Map(own.map((row) => [String(row[name]).toLowerCase(), row]));
  return starter.map((row) => {
    const given = byName.get(String(row[name]).toLowerCase());
    if (given === undefined) return row;
    const { placeholder: _, value: __, ...words } = row;
    return { ...words, ...given };
  });
}
