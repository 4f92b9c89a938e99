import { heldBy } from "../audit/index.js";
import type { Value } from "../formula/value.js";
import { serialOf } from "../job/date.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import type { WorkbookIdentity } from "../workbook/match/identity.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import type { Taker } from "./changes.js";
import { changedSince, type FilledIn, filledIn, type Since } from "./filled-in.js";
import { asWritten } from "./written.js";

/** A filled-in workbook, ready to be calculated and written again. */
export interface Reopened extends Since {
  readonly model: Model;
  readonly identity: WorkbookIdentity;
  /** Inputs, published figures and what the workbook carries of its office book; formula cells empty. */
  readonly given: Value[];
  /** What the office book said when the workbook was written. */
  readonly office: OfficeValues;
}

/**
 * Reads what a person filled in. Nothing has to be complete: what is blank stays blank. Throws RillbookError
 * for a foreign workbook, a trail that does not hold, and an input whose cell holds what it cannot.
 */
export function reopened(
  content: WorkbookContent,
  templates: readonly Template[],
  file: string,
  taker: Taker,
): Reopened {
  const filled = filledIn(content, templates, file);
  const { identity, model, cells } = filled;
  const written = asWritten(model, content, identity, file, filled.lost ? "nothing" : "properties");
  return {
    model,
    identity,
    given: givenBy(filled, cells.values),
    office: written.office,
    ...changedSince(filled, written, taker),
  };
}

/** Inputs as taken in; prices and the book's rules as the workbook holds them. */
function givenBy(
  { model, match }: Pick<FilledIn, "model" | "match">,
  inputs: ReadonlyMap<string, InputValue | null>,
): Value[] {
  return model.cells.map((cell) => {
    if (cell.declaration.kind === "input") return asValue(cell, inputs.get(cell.id) ?? null);
    if (cell.declaration.kind !== "book") return cell.fixed ?? null;
    const held = match.at.get(cell.id)?.cell.value ?? null;
    // LibreOffice may store a yes as 1
    return held === "" || typeof held === "object" ? null : heldBy(cell, held);
  });
}

const asValue = ({ declaration }: Cell, value: InputValue | null): Value =>
  declaration.quantity.kind === "date" && value !== null
    ? (serialOf(String(value)) ?? null)
    : value;
