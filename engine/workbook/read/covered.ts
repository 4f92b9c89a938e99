import { addressOf } from "./address.js";
import { areasOf } from "./area.js";

/** A forged list of areas must not take the memory: further cells are not counted. */
const mostCells = 20000;

/** So many steps may all lists of a sheet take together. */
export const stepsOfSheet = 200_000;

/**
 * Adds the cells of a list of areas such as `B4:B9 D4` (ISO/IEC 29500-1 §18.18.76) to a set, with no more than `steps`
 * of them looked at. Returns the steps that are left.
 */
export function addCovered(cells: Set<string>, areas: string, steps = stepsOfSheet): number {
  let left = steps;
  for (const { from, to } of areasOf(areas.slice(0, 20000))) {
    for (let row = from.row; row <= to.row; row++) {
      for (let column = from.column; column <= to.column; column++) {
        if (cells.size >= mostCells || left <= 0) return 0;
        left -= 1;
        cells.add(addressOf({ row, column }));
      }
    }
  }
  return left;
}
