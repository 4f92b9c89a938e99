import type { Cell, Model, Table } from "../../template/model.js";
import { tableShown } from "../../template/spread.js";
import { addressOf } from "../read/address.js";
import type { DefinedName, SheetContent, Target } from "../read/content.js";
import { type FoundBand, findBand, sameRows } from "./bands.js";
import { type Place, targetOf } from "./place.js";
import type { InsertedRow } from "./result.js";

/** The cells with names: each with its place, or the reason why it has none. */
export interface NamedCells {
  readonly found: ReadonlyMap<Cell, Place | string>;
  readonly inserted: readonly InsertedRow[];
}

/** Finds single cells by their defined name and the rows of tables by their range names. */
export function findNamed(
  model: Model,
  names: ReadonlyMap<string, DefinedName>,
  sheets: ReadonlyMap<string, SheetContent>,
): NamedCells {
  const found = new Map<Cell, Place | string>();
  const inserted: InsertedRow[] = [];
  const nameOf = (name: string) => names.get(name.toLowerCase());
  for (const cell of model.cells) {
    if (cell.table === undefined && !cell.implied) {
      found.set(cell, single(nameOf(cell.name), sheets));
    }
  }
  for (const { block, band } of model.placed) {
    const shown = tableShown(block);
    if (shown === undefined || band === undefined) continue;
    const table = model.tables.get(shown.name) as Table;
    const rows = findBand(table, band, nameOf, sheets);
    inserted.push(...(rows?.inserted ?? []));
    for (const key of band.columns) {
      const column = table.columns.get(key);
      if (column === undefined) continue;
      const target = targetOf(nameOf(column.name), sheets);
      for (const cell of column.cells) {
        if (!cell.implied) found.set(cell, inRow(cell, target, rows));
      }
    }
  }
  return { found, inserted };
}

type Sheets = ReadonlyMap<string, SheetContent>;

function single(defined: DefinedName | undefined, sheets: Sheets): Place | string {
  const target = targetOf(defined, sheets);
  if (typeof target === "string") return target;
  const { sheet, from, to } = target;
  return from.row === to.row && from.column === to.column
    ? { sheet, line: from.row, column: from.column }
    : `its name stands for ${addressOf(from)}:${addressOf(to)}, not for one cell`;
}

function inRow(cell: Cell, target: Target | string, band: FoundBand | undefined): Place | string {
  if (typeof target === "string") return target;
  if (target.from.column !== target.to.column || band === undefined) {
    return "its name stands for more than one column";
  }
  const row = (cell.row ?? 1) - 1;
  const own = target.from.row + row;
  const line = sameRows(target, band.area) ? band.lines[row] : own;
  return line === undefined || line > target.to.row
    ? "its row was deleted from the table"
    : { sheet: target.sheet, line, column: target.from.column };
}
