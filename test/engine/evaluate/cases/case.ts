import {
  type Argument,
  CellError,
  type ErrorCode,
  type Value,
} from "../../../../engine/formula/value.js";

/** One call of a spreadsheet function and what it must give. */
export interface FunctionCase {
  readonly name: string;
  /** One value, or a column of them; a lone `null` is a reference to an empty cell. */
  readonly args: readonly Argument[];
  readonly expected: Value;
  /** Where the expected value comes from. */
  readonly source: string;
  /** Where programs differ: which, and how. */
  readonly note?: string;
  /** What hyperformula gives instead, with our overrides in. */
  readonly judge?: Value;
  /** What LibreOffice gives instead. */
  readonly office?: Value;
  /** What Gnumeric gives instead. */
  readonly gnumeric?: Value;
}

export const error = (code: ErrorCode) => new CellError(code);

/** For a call that LibreOffice refuses too, but with another error. */
export const illegal = {
  note: "LibreOffice stores its error for an illegal argument as #VALUE!",
  office: error("#VALUE!"),
} as const;

/** For a number of which the last binary digits decide. */
export const unguarded = (gnumeric: Value) => ({
  note: "Gnumeric takes the binary number as it is: templates round first",
  gnumeric,
});

export const byHand = "arithmetic by hand";
export const standard = "ISO/IEC 29500-1 §18.17.7, the function's description, from memory";
export const exact = "exact rational sum, computed with Python's fractions";
export const highPrecision = "mpmath at 40 digits";
export const corpus = "value cached by the program that wrote the file, in a public corpus";
export const ours = "our rule: programs differ, so it is refused or fixed";

/** A case: name, arguments, expected value, source, and what else is to be said of it. */
export function given(
  name: string,
  args: readonly Argument[],
  expected: Value,
  source: string,
  more: Pick<FunctionCase, "note" | "judge" | "office" | "gnumeric"> = {},
): FunctionCase {
  return { name, args, expected, source, ...more };
}
