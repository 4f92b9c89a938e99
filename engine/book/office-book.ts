import type { OfficeValues } from "../template/book-layout.js";

/** What holds for every job of an office: rules, prices, rates, in tables of rows. */
export interface OfficeBook extends OfficeValues {
  /** How the office calls this book, and the day it is as of. */
  readonly name: string;
  readonly asOf: string;
  /** Free words about the book; says so where its prices are invented. */
  readonly about?: string;
  /** SHA-256 of its content: two bids with the same mark used the same prices. */
  readonly mark: string;
}
