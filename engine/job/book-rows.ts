import type { Value } from "../formula/value.js";
import type { TableBlock } from "../template/declare.js";
import type { Model } from "../template/model.js";
import { JobError } from "./job-error.js";
import type { BookRow, PriceBook } from "./price-book.js";

/**
 * The rows of the price book that a bid carries: all of a table, or those whose codes
 * the job uses. A code that the book lacks is left out here; the bid's own checks say so.
 */
export function bookRows(
  model: Model,
  block: TableBlock,
  values: readonly Value[],
  book: PriceBook,
): readonly BookRow[] {
  const from = block.from ?? "";
  const all = book.tables[from];
  if (all === undefined) {
    throw new JobError("book-lacks-table", `The price book "${book.name}" cannot be used:`, [
      `it has no table "${from}", which the template ${model.template.name} reads. Add a sheet of that name.`,
    ]);
  }
  const rows = block.usedBy === undefined ? all : usedRows(model, block.usedBy, values, all);
  if (rows.length > block.rows) {
    throw new JobError("book-too-long", `The price book "${book.name}" cannot be used:`, [
      `${rows.length} rows of "${from}" are wanted, but the bid holds ${block.rows}. Take rows out that are not used.`,
    ]);
  }
  return rows;
}

function usedRows(
  model: Model,
  usedBy: readonly string[],
  values: readonly Value[],
  all: readonly BookRow[],
): BookRow[] {
  const codes = new Set(
    model.cells
      .filter(({ name }) => usedBy.includes(name))
      .map(({ index }) => values[index])
      .filter((value) => typeof value === "string" && value !== ""),
  );
  return all.filter((row) => codes.has(String(row.code)));
}
