import { formulaIn, heldInput } from "../audit/index.js";
import { inputPlanOf } from "../job/input-plan.js";
import { recorded } from "../job/trail/inputs.js";
import type { InputValue } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import type { WorkbookMatch } from "../workbook/match/result.js";

/** The inputs as the cells of a workbook hold them. */
export interface CellInputs {
  /** By id, as the trail records them. */
  readonly values: ReadonlyMap<string, InputValue | null>;
  /** Inputs that somebody typed as a formula: its result counts. */
  readonly formulas: ReadonlyMap<string, string>;
  /** What cannot be taken in, as sentences. */
  readonly faults: readonly string[];
}

/** Reads every input of the model from a workbook's cells. */
export function cellInputs(model: Model, match: WorkbookMatch): CellInputs {
  const values = new Map<string, InputValue | null>();
  const formulas = new Map<string, string>();
  const faults = badNames(model, match);
  for (const { cell } of inputPlanOf(model).inputs) {
    const place = match.at.get(cell.id);
    // without its row, an input is blank; other reasons are among the faults
    if (place === undefined) {
      values.set(cell.id, null);
      continue;
    }
    const formula = formulaIn(cell, place.cell);
    if (formula !== undefined) formulas.set(cell.id, formula);
    const held = heldInput(model, cell, place);
    if (typeof held === "object" && held !== null) {
      const where = `${cell.id} (${cell.declaration.label}, ${place.sheet}!${place.address})`;
      faults.push([`${where} ${held.found}`, held.advice].filter(Boolean).join(". "));
    } else values.set(cell.id, held);
  }
  for (const [id, usual] of clearedReady(model, values)) values.set(id, usual);
  return { values, formulas, faults };
}

/** A row that was cleared as a whole is as it was before it began: what stands ready in it stands there again. */
function clearedReady(
  model: Model,
  values: ReadonlyMap<string, InputValue | null>,
): [string, InputValue | null][] {
  const { inputs } = inputPlanOf(model);
  const rowOf = ({ table, row }: Cell) => `${table}[${row}]`;
  const begun = new Set(
    inputs.flatMap(({ cell, ready }) =>
      !ready && values.get(cell.id) !== null ? [rowOf(cell)] : [],
    ),
  );
  return inputs.flatMap(({ cell, ready, usual }): [string, InputValue | null][] =>
    ready && values.get(cell.id) === null && !begun.has(rowOf(cell))
      ? [[cell.id, recorded(cell, usual)]]
      : [],
  );
}

/** Inputs whose name is gone or stands elsewhere: their value would be a guess. */
function badNames(model: Model, match: WorkbookMatch): string[] {
  const inputs = new Set(inputPlanOf(model).inputs.map(({ cell }) => cell.name));
  const faults = new Map<string, string>();
  for (const { name, reason } of match.missing) {
    if (inputs.has(name) && !reason.startsWith("its row was deleted")) {
      faults.set(name, `${name}: ${reason}. Put the name back, or start from a fresh copy.`);
    }
  }
  for (const { name, to } of match.stray) {
    if (!inputs.has(name) || faults.has(name)) continue;
    faults.set(
      name,
      `${name}: its name stands for ${to}, away from the cells it belongs to. Point it back, or start from a fresh copy.`,
    );
  }
  for (const { name, sheet } of match.shadowed) {
    if (!inputs.has(name)) continue;
    faults.set(
      name,
      `${name}: sheet ${sheet} has a name of the same spelling for itself. Delete that one.`,
    );
  }
  return [...faults.values()];
}
