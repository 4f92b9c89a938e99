import { columnLetters } from "../address.js";
import type { Reference } from "../formula/tree.js";
import type { Cell, Model } from "./model.js";

/** `cells.runs` stands for all cells of the sheet Runs. */
export const areaTable = "cells";

/** The name of a sheet as words of a name: `price_lists`. */
export const wordsOf = (sheet: string): string =>
  (sheet.toLowerCase().match(/[a-z0-9]+/g) ?? []).join("_");

export type Area = Extract<Reference, { kind: "area" }>;

const known = new WeakMap<readonly Cell[], ReadonlyMap<string, readonly Cell[]>>();

/** The cells within a sheet's area; those that tell of errors stay outside, or they would look at themselves. */
export function areaCells({ cells }: Pick<Model, "cells">, { sheet }: Area): readonly Cell[] {
  const areas = known.get(cells) ?? areasOf(cells);
  known.set(cells, areas);
  return areas.get(sheet) ?? [];
}

/** Of all sheets at a go: each is asked for, and the cells are many. */
function areasOf(cells: readonly Cell[]): Map<string, Cell[]> {
  const areas = new Map<string, Cell[]>();
  for (const cell of cells) {
    if (cell.apart) continue;
    const area = areas.get(cell.sheet);
    if (area === undefined) areas.set(cell.sheet, [cell]);
    else area.push(cell);
  }
  return areas;
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
