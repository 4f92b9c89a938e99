import type { Value } from "../../formula/value.js";
import { bookCopyOf } from "../../template/book-copy.js";
import type { Model } from "../../template/model.js";
import { inputPlanOf } from "../input-plan.js";
import type { OriginName, TrailEntry } from "./entry.js";
import { recorded } from "./inputs.js";

/** Where the value of an input comes from. */
export interface InputOrigin {
  /** "not in the trail": it is no default, and no entry tells of it. */
  readonly from: OriginName | "not in the trail";
  readonly by?: string;
  readonly time?: string;
  readonly note?: string;
}

/**
 * The origin of each input of a job, by id: that of its last entry in the trail, where this
 * entry gave it the value it has; else "office book" or "template default" where it has that, else
 * "not in the trail". What the book says stands among the values.
 */
export function inputOrigins(
  model: Model,
  values: readonly Value[],
  trail: readonly TrailEntry[],
): Map<string, InputOrigin> {
  const last = new Map(trail.map((entry) => [entry.input, entry]));
  const found = new Map<string, InputOrigin>();
  for (const { cell, ofRow, usual } of inputPlanOf(model).inputs) {
    const value = recorded(cell, values[cell.index]);
    const entry = last.get(cell.id);
    if (entry !== undefined && entry.new === value) {
      const { from, by, time, note } = entry;
      found.set(cell.id, { from, by, time, ...(note === undefined ? {} : { note }) });
      continue;
    }
    const copy = bookCopyOf(model, cell);
    const said = copy === undefined ? null : recorded(copy, values[copy.index]);
    if (said !== null) {
      found.set(cell.id, { from: said === value ? "office book" : "not in the trail" });
      continue;
    }
    // a row of the template's that was taken out is the person's doing
    const own = ofRow === null ? [usual, null] : [ofRow, usual ?? ofRow];
    const byTemplate = own.some((one) => recorded(cell, one) === value);
    found.set(cell.id, { from: byTemplate ? "template default" : "not in the trail" });
  }
  return found;
}
