import type { Reference } from "../formula/tree.js";
import { columnLetters } from "./layout.js";
import type { Cell, Model } from "./model.js";
import { repeatsOf } from "./repeats.js";

/** `cells.falls` stands for all cells of the sheet Falls. */
export const areaTable = "cells";

/** The name of a sheet as words of a name: `water_tables`. */
export const wordsOf = (sheet: string): string =>
  (sheet.toLowerCase().match(/[a-z0-9]+/g) ?? []).join("_");

export type Area = Extract<Reference, { kind: "area" }>;

const known = new WeakMap<readonly Cell[], Map<string, readonly Cell[]>>();

/**
 * The cells within a sheet's area. One that a further band of its table shows again counts as
 * often as it stands there. What tells of errors stays outside, or it would count itself.
 */
export function areaCells(
  model: Pick<Model, "cells" | "placed">,
  { sheet }: Area,
): readonly Cell[] {
  const areas = known.get(model.cells) ?? new Map<string, readonly Cell[]>();
  known.set(model.cells, areas);
  const found = areas.get(sheet) ?? [
    ...model.cells.filter((cell) => cell.sheet === sheet && !cell.apart),
    ...repeatsOf(model, sheet).map(({ of }) => of),
  ];
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
