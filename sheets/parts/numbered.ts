import { count, type PublishedDeclaration, published } from "../../engine/template/index.js";

/** So many rows of a table, with their numbers as data of a column. */
export const numberedRows = (rows: number, column: string) => ({
  rows,
  data: Array.from({ length: rows }, (_, i) => ({ [column]: i + 1 })),
});

/** A column that numbers the rows of its table. */
export const rowNumber = (label: string): PublishedDeclaration =>
  published(count, label, { source: "the rows of the table" });
