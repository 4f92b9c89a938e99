import { columnLetters } from "../../address.js";

/** A cell's place, counted from 1: column 1 is A. */
export interface Position {
  readonly row: number;
  readonly column: number;
}

/** The last row and column of a worksheet in the spreadsheet programs of today. */
export const lastRow = 1048576;
export const lastColumn = 16384;

/** Reads "B12", in either case. Undefined for anything that is not an address from A1 to XFD1048576. */
export function positionOf(address: string): Position | undefined {
  let at = 0;
  let column = 0;
  for (; at < address.length && at < 3; at++) {
    const letter = address.charCodeAt(at) & ~32;
    if (letter < 65 || letter > 90) break;
    column = column * 26 + letter - 64;
  }
  const digits = address.length - at;
  if (at === 0 || digits === 0 || digits > 7 || address.charCodeAt(at) === 48) return undefined;
  let row = 0;
  for (; at < address.length; at++) {
    const digit = address.charCodeAt(at) - 48;
    if (digit < 0 || digit > 9) return undefined;
    row = row * 10 + digit;
  }
  return row <= lastRow && column <= lastColumn ? { row, column } : undefined;
}

/** Writes a position as "B12". */
export function addressOf({ row, column }: Position): string {
  return columnLetters(column) + row;
}

/** The number of a column's letters: "AB" is 28. */
export function columnNumber(letters: string): number {
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  return column;
}

export { columnLetters };
