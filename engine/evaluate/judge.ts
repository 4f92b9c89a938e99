import { DetailedCellError, HyperFormula, type RawCellContent } from "hyperformula";
import { CellError, type ErrorCode, type Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { judgeFormula } from "../template/printed.js";
import { judgeOptions, registerOverrides } from "./overrides.js";

/**
 * Evaluates a job with hyperformula, the judge: on the same sheets and addresses as
 * the workbook has. Takes and returns a value for each cell of the model, by index;
 * formula cells of the list given are not looked at.
 */
export function judge(model: Model, given: readonly Value[]): Value[] {
  registerOverrides();
  const engine = HyperFormula.buildFromSheets(judgeSheets(model, given), judgeOptions);
  try {
    const ids = new Map(model.sheets.map(({ name }) => [name, engine.getSheetId(name) as number]));
    return model.cells.map((cell) => {
      const sheet = ids.get(cell.sheet) as number;
      const address = { sheet, row: cell.line - 1, col: cell.column - 1 };
      return cell.native === undefined
        ? (given[cell.index] as Value)
        : asValue(engine.getCellValue(address), cell);
    });
  } finally {
    engine.destroy();
  }
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

/** What hyperformula tells of a cell, as our value. */
export function asValue(value: unknown, cell: Cell): Value {
  if (value instanceof DetailedCellError) {
    return new CellError(value.value.replace("#ERROR!", "#VALUE!") as ErrorCode, cell.id);
  }
  if (value === null || value === undefined) return 0;
  return value as number | string | boolean;
}
