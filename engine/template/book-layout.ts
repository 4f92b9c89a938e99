import type { UnitSystem } from "../units/quantity.js";
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
  readonly whole?: boolean;
  /** A share of one, shown as a percentage. */
  readonly percent?: boolean;
  /** The texts allowed. */
  readonly choices?: readonly string[];
  /** The most characters of a text; 200 unless told. */
  readonly longest?: number;
  /** Written for people, such as the meaning of a rule, and not read. */
  readonly guide?: true;
}

/** A table of the office book. Rows are told apart by the column `code`, unless `key` names another. */
export interface BookTable {
  readonly name: string;
  /** The worksheet that holds it. */
  readonly sheet: string;
  readonly means: string;
  readonly columns: readonly BookColumn[];
  /** The columns that tell the rows apart: `code` unless told; none where rows count by their place. */
  readonly key?: readonly string[];
  /** The book may lack it, as older ones do: the template's own values hold then. */
  readonly optional?: true;
  /** Of a table of rules, what the column `value` of each row may hold, by rule. */
  readonly rules?: ReadonlyMap<string, BookColumn>;
  /** Of a table of rules, the heading under which a rule stands. */
  readonly groups?: ReadonlyMap<string, string>;
  /** Its rows are those of the template: none is added. */
  readonly fixed?: true;
  /** Rows of a new book: what the trade's sheets ask for, to be filled in. */
  readonly starter?: readonly BookRow[];
  /** What is wrong with a row as a whole and what to do; undefined where it is right. */
  readonly rule?: (row: BookRow) => string | undefined;
}

/** The tables of a trade's office book. */
export type BookLayout = readonly BookTable[];

/** The same by the system of units in which a book is kept. */
export type LayoutOf = (units: UnitSystem) => BookLayout;

/** The column that marks a row whose values stand in for those of the office. */
export const placeholderColumn: BookColumn = {
  key: "placeholder",
  kind: "yesno",
  means: "yes: a value to start from. Put the office's own in its row, and clear this cell.",
};

/** What an office book says, as far as inputs take their defaults from it. Numbers are in units of `units`, US customary unless told. */
export interface OfficeValues {
  readonly units?: UnitSystem;
  readonly tables: Readonly<Record<string, readonly BookRow[]>>;
}
