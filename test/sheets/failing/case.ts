import type { OfficeBook } from "../../../engine/book/office-book.js";
import type { BookRow } from "../../../engine/template/book-layout.js";
import type { InputValue } from "../../../engine/template/declare.js";
import { book, type Changes, type Elsewhere } from "../../support/changed-demo.js";

/** A check, and the change of the hillside demo, its office book or its cells that must make it say no. */
export type FailingCase = [check: string, inputs: () => Changes, elsewhere?: () => Elsewhere];

const withTable = (table: string, rows: readonly BookRow[]): Elsewhere => ({
  prices: { ...book, tables: { ...book.tables, [table]: rows } } satisfies OfficeBook,
});
const rowsOf = (table: string): readonly BookRow[] => book.tables[table] ?? [];

type RowChange = Readonly<Record<string, InputValue | null>>;

const changedRow = (row: BookRow, change: RowChange): BookRow =>
  Object.fromEntries(
    Object.entries({ ...row, ...change }).filter(
      (entry): entry is [string, InputValue] => entry[1] !== null,
    ),
  );

/** The office book with one row of a table changed; a column of `null` is blank. */
export const priced = (table: string, code: string, change: RowChange) => (): Elsewhere =>
  withTable(
    table,
    rowsOf(table).map((row) => (row.code === code ? changedRow(row, change) : row)),
  );

/** The office book without one row of a table. */
export const without = (table: string, code: string) => (): Elsewhere =>
  withTable(
    table,
    rowsOf(table).filter((row) => row.code !== code),
  );

/** A value pasted into a cell: past its list of choices, or over its formula. */
export const pasted = (id: string, value: string | number) => (): Elsewhere => ({
  pasted: { [id]: value },
});

/** No change of the job's inputs: the case lies elsewhere, or in the demo as it is. */
export const asItIs = (): Changes => ({});
