import type { Value } from "../../formula/value.js";
import type { InputValue } from "../../template/declare.js";
import type { Cell, Model } from "../../template/model.js";
import { writtenDate } from "../date.js";
import { canonicalJson, sha256 } from "./canonical.js";
import { kept } from "./entry.js";

/** The value of an input or office-book cell as it is recorded: dates written out, 15 digits, blank is null. */
export function recorded(cell: Cell, value: Value | undefined): InputValue | null {
  if (value === undefined || value === null || value === "" || typeof value === "object") {
    return null;
  }
  if (typeof value === "number" && cell.declaration.quantity.kind === "date") {
    return writtenDate(value);
  }
  return kept(value);
}

/** The unit of an input for the trail; none where its values are text, dates or yes and no. */
export const unitFor = ({ declaration, unit }: Cell): string =>
  declaration.quantity.kind === "number" ? unit.name : "";

/** All inputs of a job by id, as recorded. */
export function recordedInputs(
  model: Model,
  values: readonly Value[],
): Map<string, InputValue | null> {
  return new Map(
    model.cells
      .filter(({ declaration }) => declaration.kind === "input")
      .map((cell) => [cell.id, recorded(cell, values[cell.index])]),
  );
}

/** SHA-256 of the inputs that are not blank: two jobs with the same mark have the same inputs. */
export const inputsMark = (model: Model, values: readonly Value[]): string =>
  markOf(model, "input", (cell) => recorded(cell, values[cell.index]));

/** SHA-256 of the office-book figures that are not blank. */
export const pricesMark = (model: Model, values: readonly Value[]): string =>
  markOf(model, "book", (cell) => recorded(cell, values[cell.index]));

/** SHA-256 of the cells of a kind that are not blank, by id. */
export function markOf(
  model: Model,
  kind: "input" | "book",
  given: (cell: Cell) => InputValue | null | undefined,
): string {
  const listed: Record<string, InputValue> = {};
  for (const cell of model.cells) {
    const value = cell.declaration.kind === kind ? given(cell) : null;
    if (value !== null && value !== undefined) listed[cell.id] = value;
  }
  return sha256(canonicalJson(listed));
}
