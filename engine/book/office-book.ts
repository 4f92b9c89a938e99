import type { BookRow } from "../template/book-layout.js";

/** The office's prices: tables of rows (items, rates), in US units. */
export interface OfficeBook {
  /** How the office calls this book, and the day it is as of. */
  readonly name: string;
  readonly asOf: string;
  /** Free words about the book; says so where its prices are invented. */
  readonly about?: string;
  /** SHA-256 of its content: two bids with the same mark used the same prices. */
  readonly mark: string;
  readonly tables: Readonly<Record<string, readonly BookRow[]>>;
}
