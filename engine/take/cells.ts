import { addressOf } from "../address.js";
import { formulaIn } from "../audit/index.js";
import { inputPlanOf } from "../job/input-plan.js";
import { asListed } from "../job/named-choices.js";
import { recorded } from "../job/trail/inputs.js";
import type { InputValue } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import { secondCellOf } from "../template/second-cell.js";
import { takenText } from "../text/taken.js";
import type { MatchedCell, WorkbookMatch } from "../workbook/match/result.js";

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
    const held = heldBy(cell, place);
    if (typeof held === "object" && held !== null) {
      faults.push(held.fault + inTwoCells(model, cell, place.cell.value));
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

const feetAndInches =
  /^\s*(\d+(?:\.\d+)?)\s*(?:ft|feet|foot|')[\s-]*(\d+(?:\.\d+)?)\s*(?:in|inch|inches|")?\.?\s*$/;

/** Of feet and inches typed into one cell, where they go, if the sheet has two for them. */
function inTwoCells(model: Model, cell: Cell, value: unknown): string {
  const inches = secondCellOf(model, cell);
  const found = typeof value === "string" ? feetAndInches.exec(value) : null;
  if (inches === undefined || found === null || model.system !== "us") return "";
  const at = ({ column, line }: Cell) => addressOf(column, line);
  const feet = Number((Number(found[1]) + Number(found[2]) / 12).toFixed(4));
  return ` That is ${found[1]} in ${at(cell)} and ${found[2]} in ${at(inches)}, or ${feet} in ${at(cell)}.`;
}

/** The value of a cell as a job record holds it, or why it cannot. */
function heldBy(cell: Cell, place: MatchedCell): InputValue | null | { fault: string } {
  const { value } = place.cell;
  const formula = formulaIn(cell, place.cell);
  const where = `${cell.id} (${cell.declaration.label}, ${place.sheet}!${place.address})`;
  const { kind } = cell.declaration.quantity;
  if (typeof value === "object" && value !== null) {
    return { fault: `${where} shows ${value.error}. Type a value.` };
  }
  if (formula !== undefined && value === null) {
    return {
      fault: `${where} holds =${formula.slice(0, 80)} without a result. Type the value, or save the workbook in a program that calculates.`,
    };
  }
  if (value === null || value === "") return null;
  if (kind === "text") {
    if (typeof value !== "string") return upperCase(value);
    const taken = takenText(value);
    return "text" in taken
      ? (asListed(cell, taken.text) as string)
      : { fault: `${where} ${taken.trouble}` };
  }
  const wanted = kind === "yesno" ? "boolean" : "number";
  const rule = { yesno: "TRUE or FALSE", date: "a date", number: "a number" }[kind];
  // some programs store TRUE as 1, which formulas read alike
  if (kind === "yesno" && (value === 1 || value === 0)) return value === 1;
  if (typeof value !== wanted) {
    return {
      fault: `${where} holds ${JSON.stringify(value)}, but must be ${rule}, not ${nameOf(value)}. Type it again.`,
    };
  }
  if (kind === "date" && !isDay(value as number)) {
    return {
      fault: `${where} holds ${value}, but must be a whole day from 1900 to 9999. Type a date.`,
    };
  }
  return recorded(cell, value);
}

/** As a spreadsheet joins it to text. */
const upperCase = (value: number | boolean): string => String(value).toUpperCase();

const nameOf = (value: string | number | boolean): string =>
  typeof value === "string" ? "text" : typeof value === "number" ? "a number" : "yes or no";

const lastDay = 2958465;
const isDay = (serial: number): boolean =>
  Number.isInteger(serial) && serial >= 1 && serial <= lastDay;

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
