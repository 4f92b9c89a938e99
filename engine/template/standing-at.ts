import { addressOf } from "../address.js";
import type { Cell, Model } from "./model.js";

/** Where a cell stands, as spreadsheets write it: a sheet, a `!` and an address. */
const place = /^'?(.+?)'?!\$?([a-z]{1,3})\$?(\d+)$/i;

/** The sheet and the whole place, `Sheet!B12`, that a person gave; undefined for what is no place. */
export function placeGiven(given: string): { sheet: string; place: string } | undefined {
  const [, sheet = "", letters = "", line = ""] = place.exec(given) ?? [];
  return line === "" ? undefined : { sheet, place: `${sheet}!${letters}${line}` };
}

/** Where the template puts a cell. */
export const placeInTemplate = ({ sheet, column, line }: Cell): string =>
  `${sheet}!${addressOf(column, line)}`;

/**
 * The cell that stands at a place, in any case of letters.
 * @param placeOf where a cell stands; undefined for one that stands nowhere
 */
export function standingAt(
  model: Model,
  place: string,
  placeOf: (cell: Cell) => string | undefined = placeInTemplate,
): Cell | undefined {
  const wanted = place.toLowerCase();
  return model.cells.find((cell) => placeOf(cell)?.toLowerCase() === wanted);
}
