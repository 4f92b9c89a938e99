import { addressOf, columnLetters } from "../address.js";
import { type PrintStyle, print } from "../formula/print.js";
import type { Reference } from "../formula/tree.js";
import { type Area, areaCells, areaTable, corners, wordsOf } from "./area.js";
import { type Cell, type CellReference, cellOf, columnOf, type Model } from "./model.js";

/** The formula of a cell as the workbook holds it: names for single cells and columns, addresses within a row. */
export function xlsxFormula(model: Model, cell: Cell): string {
  if (cell.native === undefined) return "";
  const style: PrintStyle = {
    prefixed: true,
    exponent: "E",
    quotes: "doubled",
    reference: (reference) =>
      reference.kind === "area" ? areaOf(model, reference) : byName(model, cell, reference),
  };
  return print(cell.native, style);
}

/** `'Runs'!$A$4:$S$104`, the cells of a sheet. */
const areaOf = (model: Model, area: Area): string =>
  `'${area.sheet}'!${corners(areaCells(model, area))}`;

function byName(model: Model, from: Cell, reference: CellReference): string {
  const target = cellOf(model, reference, from.row ?? 0);
  if (reference.kind === "column" && !target.implied) return target.name;
  if (reference.kind === "scalar" && !target.implied) return target.name;
  const sheet = target.sheet === from.sheet ? "" : `'${target.sheet}'!`;
  if (reference.kind !== "column") return `${sheet}${addressOf(target.column, target.line)}`;
  return `${sheet}${rangeOf(model, reference)}`;
}

/** `B10:B21`, the cells of a column. */
export function rangeOf(model: Model, reference: Extract<Reference, { kind: "column" }>): string {
  const { cells } = columnOf(model, reference.table, reference.column);
  const [first, last] = [cells[0] as Cell, cells.at(-1) as Cell];
  const letters = columnLetters(first.column);
  return `$${letters}$${first.line}:$${letters}$${last.line}`;
}

/** The formula of a cell for hyperformula: addresses only. */
export function judgeFormula(model: Model, cell: Cell): string {
  if (cell.native === undefined) return "";
  const style: PrintStyle = {
    prefixed: false,
    exponent: "e",
    quotes: "joined",
    calledBooleans: true,
    reference: (reference) => {
      if (reference.kind === "area") return areaOf(model, reference);
      const target = cellOf(model, reference, cell.row ?? 0);
      const sheet = `'${target.sheet}'!`;
      return reference.kind === "column"
        ? `${sheet}${rangeOf(model, reference)}`
        : `${sheet}${addressOf(target.column, target.line)}`;
    },
  };
  return print(cell.native, style);
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
