import type { Value } from "../formula/value.js";
import { serialOf } from "../job/date.js";
import { inputPlanOf } from "../job/input-plan.js";
import { JobError } from "../job/job-error.js";
import { bookCopyOf } from "../template/book-copy.js";
import type { BookRow } from "../template/book-layout.js";
import { codeHolders } from "../template/code-holders.js";
import { converted } from "../template/converted.js";
import type { Model, Table } from "../template/model.js";
import { layoutOf } from "../template/office-layout.js";
import type { OfficeBook } from "./office-book.js";

/** A row of the office book in the units of a model, by place among the book columns of its table. */
export interface FittedRow {
  readonly code: string;
  readonly values: readonly Value[];
}

/** A table that the office book fills, with the book's rows ready to be copied in. */
export interface FittedTable {
  readonly name: string;
  readonly from: string;
  readonly capacity: number;
  /** The book columns by key, and the index of the first cell of each. */
  readonly keys: readonly string[];
  readonly columns: readonly number[];
  /** The cells that name the codes in use; undefined: the whole table is copied. */
  readonly usedBy?: readonly number[];
  readonly rows: readonly FittedRow[];
}

const fitted = new WeakMap<Model, WeakMap<OfficeBook, readonly FittedTable[]>>();

/** The tables of a model that an office book fills. Throws JobError where the book lacks one. */
export function fittedTables(model: Model, book: OfficeBook): readonly FittedTable[] {
  const byBook = fitted.get(model) ?? new WeakMap<OfficeBook, readonly FittedTable[]>();
  fitted.set(model, byBook);
  const known = byBook.get(book);
  if (known !== undefined) return known;
  const made = [...model.tables.values()].flatMap((table) => fitTable(model, table, book));
  byBook.set(book, made);
  return made;
}

function fitTable(model: Model, table: Table, book: OfficeBook): FittedTable[] {
  const { from, rows: capacity } = table.block;
  if (from === undefined) return [];
  const rows = book.tables[from] ?? starterRows(model, from);
  if (rows === undefined) {
    throw new JobError("book-lacks-table", `The office book "${book.name}" cannot be used:`, [
      `it has no table "${from}", which the template ${model.template.name} reads. Add a sheet of that name.`,
    ]);
  }
  // rows of a new book are made for the system of the bid
  const units = book.tables[from] === undefined ? model.system : (book.units ?? "us");
  const columns = [...table.columns.values()].filter(
    ({ declaration }) => declaration.kind === "book" && !declaration.beside,
  );
  const fitRow = (row: BookRow): FittedRow => ({
    code: codeOf(row.code ?? null),
    values: columns.map(({ key, declaration: { quantity } }) => {
      const value = row[key];
      if (value === undefined) return null;
      if (quantity.kind === "date") return serialOf(String(value)) ?? null;
      return converted(value, quantity, units, model.system);
    }),
  });
  const holders = codeHolders(table.block, model.cells);
  const naming = model.cells.filter(({ name }) => holders?.has(name));
  return [
    {
      name: table.name,
      from,
      capacity,
      keys: columns.map(({ key }) => key),
      columns: columns.map(({ cells }) => cells[0]?.index as number),
      ...(holders === undefined ? {} : { usedBy: naming.map(({ index }) => index) }),
      rows: rows.map(fitRow),
    },
  ];
}

/** What stands in for a table that older books lack: the rows that a new one opens with. */
function starterRows({ template, system }: Model, name: string): readonly BookRow[] | undefined {
  const table = layoutOf(template)(system).find((one) => one.name === name);
  return table?.optional ? table.starter : undefined;
}

/** Codes are looked up without regard to case. */
export const codeOf = (value: Value): string =>
  typeof value === "string" ? value.toLowerCase() : "";

/**
 * Copies into a job's values the rows of the office book that its bid carries: all of a
 * table, or those whose codes the job uses. A code that the book lacks is left out; the
 * bid's own checks say so. Throws JobError for a book that lacks a table or has too many rows.
 */
export function fillBook(model: Model, values: Value[], book: OfficeBook): void {
  for (const table of fittedTables(model, book)) {
    putRows(table, carriedRows(table, values), values, book.name);
  }
  putRules(model, values, book);
}

type Rules = readonly (readonly [index: number, value: Value])[];
const rules = new WeakMap<Model, WeakMap<OfficeBook, Rules>>();

/** Puts what the book says beside each input that is asked of the office. */
function putRules(model: Model, values: Value[], book: OfficeBook): void {
  for (const [index, value] of rulesOf(model, book)) values[index] = value;
}

/** What the book says, by the index of the cell that holds it: the same for every job. */
function rulesOf(model: Model, book: OfficeBook): Rules {
  const byBook = rules.get(model) ?? new WeakMap<OfficeBook, Rules>();
  rules.set(model, byBook);
  const known = byBook.get(book);
  if (known !== undefined) return known;
  const made = inputPlanOf(model, book).inputs.flatMap(({ cell, usual, ofRow, isOpen }) => {
    const copy = bookCopyOf(model, cell);
    if (copy === undefined) return [];
    const value = cell.table === undefined ? usual : (ofRow ?? (isOpen ? usual : null));
    return [[copy.index, value] as const];
  });
  byBook.set(book, made);
  return made;
}

/** The rows of a fitted table that a job carries. */
export function carriedRows(table: FittedTable, values: readonly Value[]): readonly FittedRow[] {
  if (table.usedBy === undefined) return table.rows;
  const codes = new Set(carriedCodes(table, values).map(codeOf));
  return table.rows.filter(({ code }) => codes.has(code));
}

/** The codes that a job names for a fitted table, as it writes them; none where the whole table is copied. */
export const carriedCodes = ({ usedBy = [] }: FittedTable, values: readonly Value[]): string[] =>
  usedBy.flatMap((index) => {
    const value = values[index];
    return typeof value === "string" && value !== "" ? [value] : [];
  });

/** Puts rows into their cells and clears the rest of the table. */
export function putRows(
  table: FittedTable,
  rows: readonly FittedRow[],
  values: Value[],
  book: string,
): void {
  if (rows.length > table.capacity) {
    throw new JobError("book-too-long", `The office book "${book}" cannot be used:`, [
      `${rows.length} rows of "${table.from}" are wanted, but the bid holds ${table.capacity}. Take rows out that are not used.`,
    ]);
  }
  table.columns.forEach((first, column) => {
    for (let row = 0; row < table.capacity; row++) {
      values[first + row] = rows[row]?.values[column] ?? null;
    }
  });
}
