import type { Value } from "../formula/value.js";
import { recorded } from "../job/trail/inputs.js";
import { inputOrigins } from "../job/trail/origin.js";
import type { InputValue } from "../template/declare.js";
import type { Cell } from "../template/model.js";
import type { WorkbookTrail } from "../workbook/match/trail-sheet.js";
import { type ChangedGiven, changedSince } from "./changed-givens.js";
import type { Finding } from "./finding.js";
import { type ChangedInput, movedPrices } from "./moved-price.js";
import { grouped, placeOf, type Subject, saidIn } from "./subject.js";
import { heldAs, valuesAsWritten } from "./trail.js";

/** Inputs that are not what they were when the workbook was written, with the value before each. */
export interface UntoldInputs {
  readonly findings: readonly Finding[];
  readonly changes: readonly ChangedInput[];
}

/**
 * Tells the inputs that somebody changed and of which the trail tells nothing: what each was, what it moves of the
 * price, and what to do. Also those of which the lists in the workbook say otherwise than its trail.
 *
 * @param byTemplate the values from the inputs as they are
 */
export function untoldInputs(
  subject: Subject,
  trail: WorkbookTrail | undefined,
  byTemplate: readonly Value[],
): UntoldInputs {
  if (trail === undefined) return { findings: [], changes: [] };
  const { model } = subject;
  const since = changedSince(subject, trail.written, "input");
  const changes = since.map(({ cell, then }) => ({ cell, before: heldAs(cell, then) }));
  const moves = movedPrices(model, byTemplate, changes);
  const findings = since.map((one) => changedInput(subject, one, moves.get(one.cell) ?? ""));
  return { findings: [...findings, ...grouped(contradicted(subject, trail), 1)], changes };
}

function changedInput(
  { model }: Subject,
  { cell, place, now, then }: ChangedGiven,
  moves: string,
): Finding {
  const where = placeOf(place);
  const back = then === null ? `clear ${where}` : `type ${typed(cell, then)} into ${where}`;
  return {
    grade: "doubtful",
    code: "input-untold",
    where,
    name: cell.id,
    found: `${saidIn(model, cell, now, then)}; when the workbook was written it was ${saidIn(model, cell, then, now)}${moves}`,
    expected: "an entry in the trail for every change",
    advice: `Ask who changed it. If nobody stands behind it, put the old value back: ${back} and save, or write the bid again from its job record. If it stands, bring it in with rillbook take --by <who> --note <why>, so that the trail tells it; then write the bid again.`,
  };
}

/** A value as it is typed into its cell, with all its digits. */
function typed({ declaration: { quantity } }: Cell, value: InputValue): string {
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") return quantity.kind === "date" ? value : JSON.stringify(value);
  return quantity.kind === "number" && quantity.percent
    ? `${Number((value * 100).toPrecision(14))}%`
    : String(value);
}

/** Inputs of which the lists as written say otherwise than the last entry of the trail. */
function contradicted({ model, match }: Subject, trail: WorkbookTrail): Finding[] {
  const { entries } = trail;
  const values = valuesAsWritten(model, trail);
  const from = inputOrigins(model, values, entries);
  const told = new Map(entries.map((entry) => [entry.input, entry]));
  return model.cells.flatMap((cell): Finding[] => {
    const place = match.at.get(cell.id);
    const entry = told.get(cell.id);
    const value = recorded(cell, values[cell.index]);
    if (from.get(cell.id)?.from !== "not in the trail" || value === null) return [];
    if (place === undefined || entry === undefined) return [];
    return [
      {
        grade: "doubtful",
        code: "input-untold",
        where: placeOf(place),
        name: cell.id,
        found: `${saidIn(model, cell, value, entry.new)}, by the list of what the workbook was written with`,
        expected: `${saidIn(model, cell, entry.new, value)}, which entry ${entry.number} of the trail gave it`,
        advice: "Say with rillbook set where the value comes from.",
      },
    ];
  });
}
