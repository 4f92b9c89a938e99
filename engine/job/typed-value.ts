import { RillbookError } from "../errors.js";
import type { InputDeclaration, InputValue } from "../template/declare.js";
import { ruleInWords } from "../template/implied.js";
import type { Cell } from "../template/model.js";
import { measureIn } from "../units/written.js";
import { kept } from "./trail/entry.js";

const yes = new Set(["true", "yes"]);
const no = new Set(["false", "no"]);

/**
 * A value typed on the command line, as the job record holds it: a number with its unit, `24 in`,
 * `2'6"`, or without, in the cell's own; `20%` for a percentage, `yes` or `true`, `2026-03-14` or `14.3.2026`, nothing
 * for blank. What does not fit the kind stays text, so that the check of the record tells it.
 * Throws RillbookError for a unit that measures something else and for what can be read in two ways.
 */
export function typedValue(cell: Cell, text: string): InputValue | null {
  const { kind, percent } = cell.declaration.quantity;
  if (text === "") return null;
  if (kind === "yesno") {
    const lower = text.toLowerCase();
    return yes.has(lower) ? true : no.has(lower) ? false : text;
  }
  if (kind === "date") return typedDate(text);
  if (kind !== "number") return text;
  const value = percent ? typedShare(cell, text) : measureIn(cell.unit, text);
  return value !== undefined && Number.isFinite(value) ? kept(value) : text;
}

/** With dots the day stands first everywhere; with slashes it does not, so that those stay text. */
function typedDate(text: string): string {
  const [, day = "", month = "", year = ""] =
    /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/.exec(text) ?? [];
  return year === "" ? text : `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
}

/** `7.65%` is a share of 0.0765. Without the sign nobody can tell which of the two was meant. */
function typedShare(cell: Cell, text: string): number | undefined {
  const [, digits = ""] = /^(.*?)\s*(?:%|percent|pct)$/i.exec(text) ?? [];
  const value = measureIn(cell.unit, digits === "" ? text : digits);
  if (value === undefined || value === 0) return value;
  if (digits !== "") return value / 100;
  const share = Number((value * 100).toPrecision(15));
  // a share is the same in every system of units
  const rule = ruleInWords(cell.declaration as InputDeclaration, "us");
  throw new RillbookError(
    "percent-unclear",
    `${cell.id}=${text} (${cell.declaration.label}; ${rule}) may mean ${share}% or ${value}%. Write the percent sign: ${cell.id}=${value < 1 ? share : value}%.`,
  );
}
