import type { PlainValue } from "../job/plain-value.js";

/** Where a given value comes from, in words for people and in parts for programs. */
export interface Origin {
  readonly kind: "trail" | "default" | "untold" | "published" | "office book";
  /** One line: `measured on site, by A. Estimator, 2026-05-04`. */
  readonly text: string;
  readonly by?: string;
  readonly at?: string;
  readonly from?: string;
  readonly note?: string;
}

/** One figure of a trace, with its math and, as far as it was opened, its parts. */
export interface TraceNode {
  /** `formula` is a call of a named formula, `column` a whole column within a function. */
  readonly kind: "input" | "calc" | "check" | "published" | "book" | "column" | "formula";
  /** `lift`, `runs.push[2]`, `runs.push`, or the call as written: `WIND_FORCE(face,wind)`. */
  readonly name: string;
  readonly label: string;
  readonly value: PlainValue;
  readonly unit: string;
  /** The value as the workbook shows it, with its unit. */
  readonly shown: string;
  /** In names. */
  readonly formula?: string;
  /**
   * The same with numbers, each followed by its unit in brackets; columns in braces, row after row.
   * Numbers are rounded as the workbook shows them, or to as many digits as it takes for the
   * formula to give `shown`.
   */
  readonly numbers?: string;
  /** As `numbers`, with long columns cut short by an ellipsis. */
  readonly brief?: string;
  /** Of a named formula: its parameters, as they went in. */
  readonly parameters?: readonly Parameter[];
  readonly origin?: Origin;
  readonly source?: string;
  /** Of a column: the rows in use. */
  readonly rows?: readonly Row[];
  readonly parts: readonly TraceNode[];
  /** `closed`: has parts that lie deeper than was asked for; `above`: opened earlier in this trace. */
  readonly state: "leaf" | "opened" | "closed" | "above";
}

export interface Parameter {
  readonly name: string;
  /** The argument in names. */
  readonly argument: string;
  readonly value: PlainValue;
  readonly unit: string;
}

export interface Row {
  readonly row: number;
  readonly value: PlainValue;
  readonly shown: string;
}
