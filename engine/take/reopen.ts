import type { Finding, Subject } from "../audit/index.js";
import { heldBy } from "../audit/subject.js";
import type { Value } from "../formula/value.js";
import { serialOf } from "../job/date.js";
import { JobError } from "../job/job-error.js";
import { appended } from "../job/trail/chain.js";
import type { TrailEntry } from "../job/trail/entry.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import type { WorkbookIdentity } from "../workbook/match/identity.js";
import { matchWorkbook } from "../workbook/match/match.js";
import { toldIdentity } from "../workbook/match/told-identity.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { cellInputs } from "./cells.js";
import { changesOf, type Taker } from "./changes.js";
import { modelOfWorkbook } from "./model-of.js";
import { changedBesideInputs } from "./other-changes.js";
import { asWritten } from "./written.js";

/** A filled-in workbook, ready to be calculated and written again. */
export interface Reopened {
  readonly model: Model;
  readonly identity: WorkbookIdentity;
  /** Inputs, published figures and what the workbook carries of its office book; formula cells empty. */
  readonly given: Value[];
  /** What the office book said when the workbook was written. */
  readonly office: OfficeValues;
  readonly trail: readonly TrailEntry[];
  /** The entries that tell what was typed in since. */
  readonly entries: readonly TrailEntry[];
  /** What was changed besides inputs, none of which is kept. */
  readonly findings: readonly Finding[];
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
  const { identity } = toldIdentity(content);
  const model = modelOfWorkbook(content, identity, templates, file);
  const match = matchWorkbook(content, model);
  const cells = cellInputs(model, match);
  if (cells.faults.length > 0) {
    throw new JobError("workbook-inputs", `The workbook ${file} cannot be taken in:`, cells.faults);
  }
  const written = asWritten(model, content, identity, file);
  const trail = appended(written.trail, changesOf(model, content, cells, written.inputs, taker));
  return {
    model,
    identity,
    given: givenBy({ content, model, match }, cells.values),
    office: written.office,
    trail,
    entries: trail.slice(written.trail.length),
    findings: changedBesideInputs({ content, model, match }, identity),
  };
}

/** Inputs as taken in; prices and the book's rules as the workbook holds them. */
function givenBy(
  { model, match }: Subject,
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
