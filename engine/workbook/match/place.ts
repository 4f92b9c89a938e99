import { addressOf } from "../read/address.js";
import type { DefinedName, SheetContent, Target } from "../read/content.js";

/** Where a cell was found. */
export interface Place {
  readonly sheet: string;
  readonly line: number;
  readonly column: number;
}

/** `Sizes!B12`. */
export const written = ({ sheet, line, column }: Place): string =>
  `${sheet}!${addressOf({ row: line, column })}`;

export const isSamePlace = (one: Place, other: Place): boolean =>
  one.line === other.line && one.column === other.column && one.sheet === other.sheet;

/** The cells a defined name points to, or why it points to none, as a sentence part. */
export function targetOf(
  defined: DefinedName | undefined,
  sheets: ReadonlyMap<string, SheetContent>,
): Target | string {
  if (defined === undefined) return "its name was deleted";
  if (defined.target === undefined) {
    return `its name stands for ${JSON.stringify(defined.text.slice(0, 60))}, not for cells`;
  }
  return sheets.has(defined.target.sheet)
    ? defined.target
    : `its name points to ${defined.target.sheet}, which holds no cells`;
}
