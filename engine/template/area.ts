import { columnLetters } from "../address.js";
import type { Reference } from "../formula/tree.js";
import type { Cell, Model } from "./model.js";

/** `cells.runs` stands for all cells of the sheet Runs. */
export const areaTable = "cells";

/** The name of a sheet as words of a name: `price_lists`. */
export const wordsOf = (sheet: string): string =>
  (sheet.toLowerCase().match(/[a-z0-9]+/g) ?? []).join("_");

export type Area = Extract<Reference, { kind: "area" }>;

const known = new WeakMap<readonly Cell[], Map<string, readonly Cell[]>>();

/** The cells within a sheet's area; those that tell of errors stay outside, or they would look at themselves. */
export function areaCells(model: Pick<Model, "cells">, { sheet }: Area): readonly Cell[] {
  const areas = known.get(model.cells) ?? new Map<string, readonly Cell[]>();
  known.set(model.cells, areas);
  const found =
    areas.get(sheet) ?? model.cells.filter((cell) => cell.sheet === sheet && !cell.apart);
  areas.set(sheet, found);
  return found;
}

/** Where an area's corners stand, given where each of its cells does. */
export function corners(
  places: readonly { readonly column: number; readonly line: number }[],
): string {
  const columns = places.map(({ column }) => column);
  const lines = places.map(({ line }) => line);
  const [left, right] = [Math.min(...columns), Math.max(...columns)];
  const [top, bottom] = [Math.min(...lines), Math.max(...lines)];
  return `$${columnLetters(left)}$${top}:$${columnLetters(right)}$${bottom}`;
}
