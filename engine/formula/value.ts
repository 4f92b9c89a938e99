/** The error values a cell can show, as ISO/IEC 29500-1 §18.18.11 (cell type "e") spells them. */
export type ErrorCode =
  | "#DIV/0!"
  | "#N/A"
  | "#NAME?"
  | "#NULL!"
  | "#NUM!"
  | "#REF!"
  | "#VALUE!"
  | "#CYCLE!";

/** An error as the value of a cell. `origin` names the cell in which it arose. */
export class CellError {
  readonly code: ErrorCode;
  readonly origin: string | undefined;

  constructor(code: ErrorCode, origin?: string) {
    this.code = code;
    this.origin = origin;
  }

  toString(): string {
    return this.code;
  }
}

/** What a cell can hold. A blank input is `null`; a formula never yields `null`. */
export type Value = number | string | boolean | CellError | null;

/** An argument of a native function: one value, or a rectangle read row by row. */
export type Argument = Value | readonly Value[];

/**
 * Are two values the same as they stand? An error is so to itself alone. Most cells are blank, and most others numbers:
 * what is asked of one kind alone is compiled to a few instructions, and millions of cells are compared so.
 */
export function isPlainlySame(one: Value, other: Value): boolean {
  if (one === null || other === null) return one === other;
  return typeof one === "number" && typeof other === "number" ? one === other : one === other;
}
