import { suggestion } from "../formula/suggest.js";
import { serialOf } from "../job/date.js";
import type { BookColumn } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import { choiceNamed } from "../text/choice.js";
import { takenText } from "../text/taken.js";

/** A cell as it stands in a file: dates are text like 2026-05-31 already. */
export type RawCell = InputValue | null | undefined | { readonly error: string };

/** A cell as the office book keeps it, or what is wrong with it and what to do. */
export type CheckedCell = { readonly value: InputValue | undefined } | { readonly fault: string };

const codeShape = /^[A-Za-z0-9][A-Za-z0-9._-]{0,59}$/;
const longestText = 200;

/** Checks one cell against its column. A blank cell has the value undefined. */
export function checkCell(column: BookColumn, raw: RawCell): CheckedCell {
  const taken = typeof raw === "string" ? takenText(raw.trim()) : { text: raw };
  if ("trouble" in taken) return fault(taken.trouble);
  const cell = taken.text;
  if (cell === null || cell === undefined || cell === "") {
    return column.required ? fault("is blank, but is needed. Fill it in.") : { value: undefined };
  }
  if (typeof cell === "object") {
    return fault(`holds the error ${cell.error}. Type the value.`);
  }
  switch (column.kind) {
    case "number":
      return checkNumber(column, cell);
    case "date":
      return typeof cell === "string" && serialOf(cell) !== undefined
        ? { value: cell }
        : fault(`is ${shown(cell)}, which is not a date. Type a date, such as 2026-05-31.`);
    case "yesno":
      return checkYesNo(cell);
    default:
      return checkText(column, cell);
  }
}

function checkNumber(column: BookColumn, cell: InputValue): CheckedCell {
  const { least, most, whole } = column;
  if (typeof cell !== "number" || !Number.isFinite(cell)) {
    return fault(`is ${shown(cell)}, but must be a number. Type it without unit or sign of money.`);
  }
  const said = (value: number) =>
    column.percent ? `${Number((value * 100).toPrecision(6))}%` : value;
  if (least !== undefined && cell < least) {
    return fault(`is ${said(cell)}, but must be at least ${said(least)}. Correct it.`);
  }
  if (most !== undefined && cell > most) {
    return fault(`is ${said(cell)}, but must be at most ${said(most)}. Correct it.`);
  }
  if (whole && !Number.isInteger(cell)) {
    return fault(`is ${said(cell)}, but must be a whole number. Correct it.`);
  }
  return { value: cell };
}

function checkYesNo(cell: InputValue): CheckedCell {
  if (typeof cell === "boolean") return { value: cell };
  const word = String(cell).toLowerCase();
  if (word === "yes" || word === "no") return { value: word === "yes" };
  return fault(`is ${shown(cell)}, but must be yes or no. Correct it.`);
}

function checkText(
  { kind, choices, longest = longestText }: BookColumn,
  cell: InputValue,
): CheckedCell {
  if (typeof cell !== "string") {
    return fault(`is ${shown(cell)}, but must be text. Format the cell as text and type it again.`);
  }
  if (kind === "code" && !codeShape.test(cell)) {
    return fault(
      `is ${shown(cell)}, but a code has letters, digits, "-", "_" and "." only. Give it another code.`,
    );
  }
  const chosen = choices === undefined ? cell : choiceNamed(cell, choices);
  if (choices !== undefined && chosen === undefined) {
    const meant = suggestion(cell, choices);
    return fault(`is ${shown(cell)}, but must be one of: ${choices.join(", ")}.${meant}`);
  }
  if (cell.length > longest) {
    return fault(`has ${cell.length} characters; ${longest} are the most. Shorten it.`);
  }
  return { value: chosen };
}

const fault = (sentence: string): CheckedCell => ({ fault: sentence });

function shown(cell: InputValue): string {
  const text = JSON.stringify(cell);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
