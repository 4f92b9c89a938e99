import type { RawCellContent } from "hyperformula";
import { CellError, type ErrorCode, type Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { judgeFormula } from "../template/printed.js";

/** What hyperformula is given to judge: its sheets, and where on them the formulas stand. */
export interface JudgeTask {
  readonly sheets: Record<string, RawCellContent[][]>;
  /** Of each formula: the place of its sheet among `sheets`, row and column from 0. */
  readonly places: readonly number[];
}

/** A value as it passes between threads: an error is an object with its code. */
export type JudgedValue = number | string | boolean | null | { readonly error: string };

/** A job as hyperformula is given it. */
export function judgeTask(model: Model, given: readonly Value[]): JudgeTask {
  const sheets = judgeSheets(model, given);
  const at = new Map(Object.keys(sheets).map((name, i) => [name, i]));
  const places = model.order.flatMap(({ sheet, line, column }) => [
    at.get(sheet) as number,
    line - 1,
    column - 1,
  ]);
  return { sheets, places };
}

/** The values given, with what was judged of each formula in its cell. */
export function judgedList(
  model: Model,
  given: readonly Value[],
  judged: readonly JudgedValue[],
): Value[] {
  const values = [...given];
  model.order.forEach((cell, i) => {
    values[cell.index] = ownValue(judged[i] as JudgedValue, cell);
  });
  return values;
}

/** The sheets of a job as hyperformula takes them. */
export function judgeSheets(
  model: Model,
  given: readonly Value[],
): Record<string, RawCellContent[][]> {
  const sheets: Record<string, RawCellContent[][]> = {};
  for (const { name } of model.sheets) sheets[name] = [];
  for (const cell of model.cells) {
    const rows = sheets[cell.sheet] as RawCellContent[][];
    while (rows.length < cell.line) rows.push([]);
    (rows[cell.line - 1] as RawCellContent[])[cell.column - 1] =
      cell.native === undefined
        ? givenContent(given[cell.index] ?? null)
        : `=${judgeFormula(model, cell)}`;
  }
  for (const rows of Object.values(sheets)) for (const row of rows) fillGaps(row);
  return sheets;
}

/** A given value as the content of a cell. */
export function givenContent(value: Value): RawCellContent {
  // the quote keeps text from being read as a date, a number or a formula
  if (typeof value === "string") return `'${value}`;
  return value instanceof CellError ? null : value;
}

/** hyperformula stops at holes in a row's array. */
function fillGaps(row: RawCellContent[]): void {
  for (let i = 0; i < row.length; i++) row[i] ??= null;
}

/** What was judged of a cell, as our value. */
export function ownValue(value: JudgedValue, { id }: Cell): Value {
  return typeof value === "object" && value !== null
    ? new CellError(value.error as ErrorCode, id)
    : value;
}
