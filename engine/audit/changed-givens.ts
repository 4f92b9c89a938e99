import { recorded } from "../job/trail/inputs.js";
import type { InputValue } from "../template/declare.js";
import type { Cell } from "../template/model.js";
import type { MatchedCell } from "../workbook/match/result.js";
import { formulaIn, heldBy, type Subject } from "./subject.js";

/** An input or a price that is no longer what it was when the workbook was written. */
export interface ChangedGiven {
  readonly cell: Cell;
  readonly place: MatchedCell;
  readonly now: InputValue | null;
  readonly then: InputValue | null;
}

/** The inputs, or the prices, that are no longer what they were when the workbook was written. */
export function changedSince(
  { model, match }: Subject,
  written: ReadonlyMap<string, InputValue | null>,
  kind: "input" | "book",
): ChangedGiven[] {
  return model.cells.flatMap((cell): ChangedGiven[] => {
    const place = cell.declaration.kind === kind ? match.at.get(cell.id) : undefined;
    if (place === undefined || formulaIn(cell, place.cell) !== undefined) return [];
    const now = recorded(cell, heldBy(cell, place.cell.value));
    const then = written.get(cell.id) ?? null;
    return alike(now, then) ? [] : [{ cell, place, now, then }];
  });
}

const alike = (a: InputValue | null, b: InputValue | null): boolean =>
  typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b))
    : a === b;
