import { addressOf, columnLetters } from "../address.js";
import { print } from "../formula/print.js";
import type { Reference } from "../formula/tree.js";
import { type Area, areaCells, areaTable, corners, wordsOf } from "./area.js";
import { type Cell, type CellReference, cellOf, columnOf, type Model } from "./model.js";
import { pickedFromOneRow } from "./one-row.js";
import { type OwnReference, RowPrinter } from "./pattern.js";

const inWorkbook = new RowPrinter({
  prefixed: true,
  exponent: "E",
  quotes: "doubled",
  lasting: (model, sheet, reference) =>
    reference.kind === "area" ? areaOf(model, reference) : byName(model, sheet, reference),
  own: (model, cell, reference) => addressWithin(model, cell, reference),
  readable: pickedFromOneRow,
});

/** The formula of a cell as the workbook holds it: names for single cells and columns, addresses within a row. */
export const xlsxFormula = (model: Model, cell: Cell): string => inWorkbook.formula(model, cell);

/** `'Runs'!$A$4:$S$104`, the cells of a sheet. */
const areaOf = (model: Model, area: Area): string =>
  `'${area.sheet}'!${corners(areaCells(model, area))}`;

function byName(model: Model, from: string, reference: Exclude<CellReference, OwnReference>) {
  const target = cellOf(model, reference, 0);
  if (!target.implied) return target.name;
  const sheet = target.sheet === from ? "" : `'${target.sheet}'!`;
  if (reference.kind === "column") return `${sheet}${rangeOf(model, reference)}`;
  return `${sheet}${addressOf(target.column, target.line)}`;
}

function addressWithin(model: Model, from: Cell, reference: OwnReference): string {
  const { sheet, column, line } = cellOf(model, reference, from.row ?? 0);
  const address = addressOf(column, line);
  return sheet === from.sheet ? address : `'${sheet}'!${address}`;
}

/** `B10:B21`, the cells of a column. */
export function rangeOf(model: Model, reference: Extract<Reference, { kind: "column" }>): string {
  const { cells } = columnOf(model, reference.table, reference.column);
  const [first, last] = [cells[0] as Cell, cells.at(-1) as Cell];
  const letters = columnLetters(first.column);
  return `$${letters}$${first.line}:$${letters}$${last.line}`;
}

const inJudge = new RowPrinter({
  prefixed: false,
  exponent: "e",
  quotes: "joined",
  calledBooleans: true,
  lasting: (model, _, reference) => {
    if (reference.kind === "area") return areaOf(model, reference);
    if (reference.kind === "scalar") return addressInBook(model, reference, 0);
    const { sheet } = cellOf(model, reference, 0);
    return `'${sheet}'!${rangeOf(model, reference)}`;
  },
  own: (model, cell, reference) => addressInBook(model, reference, cell.row ?? 0),
});

/** The formula of a cell for hyperformula: addresses only. */
export const judgeFormula = (model: Model, cell: Cell): string => inJudge.formula(model, cell);

function addressInBook(model: Model, reference: CellReference, row: number): string {
  const { sheet, column, line } = cellOf(model, reference, row);
  return `'${sheet}'!${addressOf(column, line)}`;
}

/** The formula of a cell for people: by name, named formulas closed, units behind bare numbers. */
export function spokenFormula(cell: Cell): string {
  if (cell.spoken === undefined) return "";
  return print(cell.spoken, {
    prefixed: false,
    exponent: "e",
    quotes: "doubled",
    literalUnits: true,
    reference: spokenName,
  });
}

/** `lift`, `width`, `above.sum`, `runs.cost`. */
export function spokenName(reference: Reference): string {
  if (reference.kind === "scalar") return reference.name;
  if (reference.kind === "area") return `${areaTable}.${wordsOf(reference.sheet)}`;
  if (reference.kind === "column") return `${reference.table}.${reference.column}`;
  return reference.back === 1 ? `above.${reference.column}` : reference.column;
}
