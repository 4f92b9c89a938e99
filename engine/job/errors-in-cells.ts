import { CellError, type ErrorCode, type Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";

/** An error where it arose, and how many cells hold it. */
export interface RootError {
  readonly cell: Cell;
  readonly code: ErrorCode;
  /** The cell itself and all that it reaches. */
  readonly cells: number;
}

/** The errors of an evaluated job by the cell in which each arose, the one that reaches most cells first. */
export function rootErrors(
  model: Model,
  values: readonly Value[],
  cells: readonly Cell[] = model.cells,
): RootError[] {
  const roots = new Map<string, RootError>();
  for (const cell of cells) {
    const value = values[cell.index];
    if (!(value instanceof CellError)) continue;
    const root = model.byId.get(value.origin ?? cell.id) ?? cell;
    const known = roots.get(root.id);
    roots.set(root.id, { cell: root, code: value.code, cells: (known?.cells ?? 0) + 1 });
  }
  return [...roots.values()].sort((a, b) => b.cells - a.cells || a.cell.index - b.cell.index);
}

/** `#DIV/0! in runs.cost[2] (sheet Runs, Cost)`. */
export const rootInWords = ({ cell, code }: RootError): string =>
  `${code} in ${cell.id} (sheet ${cell.sheet}${cell.declaration.label && `, ${cell.declaration.label}`})`;
