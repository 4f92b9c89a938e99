import type { InputValue } from "./declare.js";

/** A row of the office book, by column; absent cells are blank. */
export type BookRow = Readonly<Record<string, InputValue>>;

/** What a column of the office book may hold. A code is text without spaces or wildcards. */
export type BookKind = "code" | "text" | "number" | "date" | "yesno";

/** One column of a table of the office book: declared once, for reader and writer. */
export interface BookColumn {
  readonly key: string;
  readonly kind: BookKind;
  /** What it means, with its unit where it is a number. */
  readonly means: string;
  readonly required?: boolean;
  readonly least?: number;
  readonly most?: number;
  /** The texts allowed. */
  readonly choices?: readonly string[];
}

/** A table of the office book. Rows are told apart by the column `code`. */
export interface BookTable {
  readonly name: string;
  /** The worksheet that holds it. */
  readonly sheet: string;
  readonly means: string;
  readonly columns: readonly BookColumn[];
  /** Rows of a new book: the codes that the trade's sheets ask for, without prices. */
  readonly starter?: readonly BookRow[];
  /** What is wrong with a row as a whole and what to do; undefined where it is right. */
  readonly rule?: (row: BookRow) => string | undefined;
}

/** The tables of a trade's office book. */
export type BookLayout = readonly BookTable[];
