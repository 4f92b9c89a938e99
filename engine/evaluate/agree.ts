import { RillbookError } from "../errors.js";
import { CellError, type Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";

/**
 * Holds the judge's values against the closures': both come from the same trees by different ways, so
 * a difference is a fault of the program. Throws RillbookError naming the first cell in which they differ.
 */
export function mustAgree(model: Model, judged: readonly Value[], fast: readonly Value[]): void {
  const cell = firstDifference(model, judged, fast);
  if (cell !== undefined) throw evaluatorsDiffer(cell, judged[cell.index], fast[cell.index]);
}

/** What is told where two evaluators differ. */
export const evaluatorsDiffer = (
  { id, sheet }: Cell,
  judged: Value | undefined,
  fast: Value | undefined,
): RillbookError =>
  new RillbookError(
    "evaluators-differ",
    `The two evaluators differ in ${id} on sheet ${sheet}: ${String(judged)} and ${String(fast)}. No bid is written. Please report this with the job record.`,
    3,
  );

/** The first cell whose values differ by more than 1e-9 of their size. */
export function firstDifference(
  model: Model,
  first: readonly Value[],
  second: readonly Value[],
  tolerance = 1e-9,
  cells: readonly Cell[] = model.order,
): Cell | undefined {
  return cells.find(({ index }) => !alike(first[index], second[index], tolerance));
}

/** Are two values the same, numbers to within a part of their size? */
export function alike(a: Value | undefined, b: Value | undefined, tolerance = 1e-9): boolean {
  if (typeof a === "number" && typeof b === "number") {
    return Math.abs(a - b) <= tolerance * Math.max(1, Math.abs(a), Math.abs(b));
  }
  if (a instanceof CellError && b instanceof CellError) return a.code === b.code;
  return a === b;
}
