import { addressOf } from "../address.js";
import { asListed } from "../job/named-choices.js";
import { recorded } from "../job/trail/inputs.js";
import type { InputValue } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import { secondCellOf } from "../template/second-cell.js";
import { takenText } from "../text/taken.js";
import type { MatchedCell } from "../workbook/match/result.js";
import { formulaIn } from "./subject.js";

/** Why what stands in an input's cell cannot be its value. */
export interface InputFault {
  /** As it follows the cell's name: `holds "three", but must be a number, not text`. */
  readonly found: string;
  readonly expected: string;
  /** A sentence; empty where `found` says it. */
  readonly advice: string;
}

/** The value of an input's cell as a job record holds it, or why it cannot. */
export function heldInput(
  model: Model,
  cell: Cell,
  place: MatchedCell,
): InputValue | null | InputFault {
  const { value } = place.cell;
  const formula = formulaIn(cell, place.cell);
  const { kind } = cell.declaration.quantity;
  const rule = { yesno: "TRUE or FALSE", date: "a date", number: "a number", text: "a text" }[kind];
  const fault = (found: string, advice: string): InputFault => ({
    found,
    expected: rule,
    advice: advice + inTwoCells(model, cell, value),
  });
  if (typeof value === "object" && value !== null) {
    return fault(`shows ${value.error}`, "Type a value.");
  }
  if (formula !== undefined && value === null) {
    return fault(
      `holds =${formula.slice(0, 80)} without a result`,
      "Type the value, or save the workbook in a program that calculates.",
    );
  }
  if (value === null || value === "") return null;
  if (kind === "text") {
    if (typeof value !== "string") return upperCase(value);
    const taken = takenText(value);
    return "text" in taken ? (asListed(cell, taken.text) as string) : fault(taken.trouble, "");
  }
  const wanted = kind === "yesno" ? "boolean" : "number";
  // some programs store TRUE as 1, which formulas read alike
  if (kind === "yesno" && (value === 1 || value === 0)) return value === 1;
  if (typeof value !== wanted) {
    return fault(
      `holds ${JSON.stringify(value)}, but must be ${rule}, not ${nameOf(value)}`,
      "Type it again.",
    );
  }
  if (kind === "date" && !isDay(value as number)) {
    return fault(`holds ${value}, but must be a whole day from 1900 to 9999`, "Type a date.");
  }
  return recorded(cell, value);
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

/** As a spreadsheet joins it to text. */
const upperCase = (value: number | boolean): string => String(value).toUpperCase();

const nameOf = (value: string | number | boolean): string =>
  typeof value === "string" ? "text" : typeof value === "number" ? "a number" : "yes or no";

const lastDay = 2958465;
const isDay = (serial: number): boolean =>
  Number.isInteger(serial) && serial >= 1 && serial <= lastDay;
