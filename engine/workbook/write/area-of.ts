import { addressOf } from "../../address.js";
import type { Cell } from "../../template/model.js";

/** The cells of a column as an area of their own sheet: `C5:C16`. */
export function areaOf(cells: readonly Cell[]): string {
  const [first, last] = [cells[0] as Cell, cells.at(-1) as Cell];
  return `${addressOf(first.column, first.line)}:${addressOf(last.column, last.line)}`;
}
