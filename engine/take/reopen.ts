import { heldBy } from "../audit/index.js";
import type { Value } from "../formula/value.js";
import { serialOf } from "../job/date.js";
import { recorded } from "../job/trail/inputs.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import type { WorkbookIdentity } from "../workbook/match/identity.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import type { Taker } from "./changes.js";
import { changedSince, type FilledIn, filledIn, type Since } from "./filled-in.js";
import { type AsWritten, asWritten } from "./written.js";

/** A filled-in workbook, ready to be calculated and written again. */
export interface Reopened extends Since {
  readonly model: Model;
  readonly identity: WorkbookIdentity;
  /** Inputs, published figures and what the workbook carries of its office book; formula cells empty. */
  readonly given: Value[];
  /** What the office book said when the workbook was written. */
  readonly office: OfficeValues;
  /** Why nobody can tell with which prices the workbook was written; undefined where it shows them. */
  readonly pricesUntold: string | undefined;
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
  const since = changedSince(filled, written, taker);
  return {
    model,
    identity,
    given: givenBy(filled, cells.values, written),
    office: written.office,
    pricesUntold: written.pricesHold ? undefined : pricesUntold(since),
    ...since,
  };
}

/** Inputs as taken in; prices and the book's rules as the workbook was written with, whatever stands in their cells now. */
function givenBy(
  { model, match }: Pick<FilledIn, "model" | "match">,
  inputs: ReadonlyMap<string, InputValue | null>,
  { prices }: AsWritten,
): Value[] {
  return model.cells.map((cell) => {
    if (cell.declaration.kind === "input") return asValue(cell, inputs.get(cell.id) ?? null);
    if (cell.declaration.kind !== "book") return cell.fixed ?? null;
    const place = match.at.get(cell.id);
    const then = prices.get(cell.id) ?? null;
    if (place === undefined) return asValue(cell, then);
    // LibreOffice may store a yes as 1
    const held = heldBy(cell, place.cell.value);
    // the list keeps 15 digits: a price that is still that one keeps all of its own
    return recorded(cell, held) === then && then !== null ? held : asValue(cell, then);
  });
}

function pricesUntold({ findings }: Since): string {
  const changed = findings.filter(({ code }) => code === "price-changed");
  const count = changed.reduce((sum, { names }) => sum + (names?.length ?? 1), 0);
  const first = changed
    .slice(0, 3)
    .map(({ where, found }) => `${where} is ${found}`)
    .join("; ");
  const list = "the list of prices as written, on sheet Trail, does not fit its mark";
  if (count === 0) return list;
  return `${list}, and ${count} of the prices ${count === 1 ? "is" : "are"} not that list's either: ${first}`;
}

const asValue = ({ declaration }: Cell, value: InputValue | null): Value =>
  declaration.quantity.kind === "date" && value !== null
    ? (serialOf(String(value)) ?? null)
    : value;
