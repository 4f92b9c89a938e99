import type { BookTable } from "../template/book-layout.js";
import type { RawCell } from "./cell.js";

/** A row as it stands in a file, with the number that people find it by. */
export interface RawRow {
  readonly at: number;
  readonly cells: Readonly<Record<string, RawCell>>;
}

export interface RawTable {
  readonly rows: readonly RawRow[];
  /** The columns that the file has, for telling a missing column from a blank cell. */
  readonly columns?: readonly string[];
  /** The letters of the columns of a worksheet, by key. */
  readonly letters?: Readonly<Record<string, string>>;
}

/** An office book as it stands in a file, before its rows are checked. */
export interface RawBook {
  readonly name: RawCell;
  readonly asOf: RawCell;
  readonly about: RawCell;
  /** The system of units in which it is kept: US customary where it does not say. */
  readonly units?: RawCell;
  readonly tables: Readonly<Record<string, RawTable | undefined>>;
  /** How a table is called in the file: `sheet Items`. */
  readonly where: (table: BookTable) => string;
}
