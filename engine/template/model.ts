import type { NamedFormula } from "../formula/named-formula.js";
import type { Reference, Tree } from "../formula/tree.js";
import type { Value } from "../formula/value.js";
import type { UnitSystem } from "../units/quantity.js";
import type { Unit } from "../units/unit.js";
import type { Block, CellDeclaration, SheetDeclaration, TableBlock } from "./declare.js";
import type { Template } from "./template.js";

/** One cell of a compiled template: where it stands and what it holds. */
export interface Cell {
  /** Place in the list of values of a job. The rows of a column follow one another. */
  readonly index: number;
  /** `lift`, or `runs.length[3]`. */
  readonly id: string;
  /** `lift`, or `runs.length`. */
  readonly name: string;
  readonly table?: string;
  /** The row of the table, from 1. */
  readonly row?: number;
  readonly declaration: CellDeclaration;
  /** The unit in which the value is held and shown. */
  readonly unit: Unit;
  readonly sheet: string;
  /** Address: column (A is 1) and line of the worksheet. */
  readonly column: number;
  readonly line: number;
  /** Cells that the compiler adds (messages) carry no defined name. */
  readonly implied: boolean;
  /** Tells of errors in other cells, and is not looked at for errors itself. */
  readonly apart: boolean;
  /** The value of a cell without a formula that the template itself fixes, in `unit`. */
  readonly fixed?: number | string | boolean;
  /** The formula as it is spoken of: named formulas closed. Where it is but words, the cell holds them, as `fixed`. */
  readonly spoken?: Tree;
  /** The formula as it is calculated: native functions only. */
  readonly native?: Tree;
  /** Of a check in a table whose rows can have several messages, its sentence: it stands in no cell of its own. */
  readonly says?: Tree;
  /** Of a cell whose table tells which rows are in use, the formula that holds where this one is: part of `spoken`. */
  readonly inUse?: Tree;
}

/** A column of a table: its cells lie one under another, on one sheet. */
export interface Column {
  readonly name: string;
  readonly table: string;
  readonly key: string;
  readonly declaration: CellDeclaration;
  readonly cells: readonly Cell[];
}

/** The columns of a table may stand on several sheets, row by row. */
export interface Table {
  readonly name: string;
  /** The sheet that is read for it: where its results stand. */
  readonly home: string;
  readonly block: TableBlock;
  readonly columns: ReadonlyMap<string, Column>;
  /** The condition that a row is in use, where the table has one. */
  readonly filled?: Condition;
  /** The condition that a row is worth a look, likewise. */
  readonly shown?: Condition;
}

/** A condition on the cells of a row, as it is spoken of and as it is calculated. */
export interface Condition {
  readonly spoken: Tree;
  readonly native: Tree;
}

/** A block with the worksheet lines it takes. */
export interface PlacedBlock {
  readonly block: Block;
  readonly sheet: string;
  /** The line of the heading. */
  readonly top: number;
  /** The last line that the block uses. */
  readonly bottom: number;
  /** For tables and parts of tables: the columns that are shown. */
  readonly band?: Band;
}

/** Columns of a table beside one another. */
export interface Band {
  /** The line of the column headings; units follow, then the rows. */
  readonly header: number;
  readonly columns: readonly string[];
  /** On paper: the columns of the sheet on which they begin. */
  readonly starts?: readonly number[];
}

/** A template compiled for one system of units: everything evaluators and writers need. */
export interface Model {
  readonly template: Template;
  readonly system: UnitSystem;
  readonly sheets: readonly SheetDeclaration[];
  readonly placed: readonly PlacedBlock[];
  readonly cells: readonly Cell[];
  readonly byId: ReadonlyMap<string, Cell>;
  readonly tables: ReadonlyMap<string, Table>;
  readonly formulas: ReadonlyMap<string, NamedFormula>;
  /** The formula cells in an order in which each follows what it needs. */
  readonly order: readonly Cell[];
  /** All checks, in the order of the sheets: cell names (`runs.fed` for a column). */
  readonly checks: readonly string[];
}

/** What stands for one cell, or for a column by its first. */
export type CellReference = Exclude<Reference, { kind: "area" }>;

/** The cell that a reference means from within a row (0 outside tables). */
export function cellOf(model: Model, reference: CellReference, row: number): Cell {
  const at = reference.kind === "scalar" ? 0 : reference.kind === "own" ? row - reference.back : 1;
  const cell =
    reference.kind === "scalar"
      ? model.byId.get(reference.name)
      : model.tables.get(reference.table)?.columns.get(reference.column)?.cells[at - 1];
  if (cell !== undefined) return cell;
  const id =
    reference.kind === "scalar" ? reference.name : `${reference.table}.${reference.column}[${at}]`;
  throw new Error(`No cell "${id}" in template ${model.template.name}.`);
}

/** The sheet on which a cell is read: its table's, where it stands among the workings. */
export function homeOf(model: Model, cell: Cell): string {
  const table = cell.table === undefined ? undefined : model.tables.get(cell.table);
  return table?.home ?? cell.sheet;
}

/** The column behind a column reference, or a name such as `runs.cost`. */
export function columnOf(model: Model, table: string, key: string): Column {
  const column = model.tables.get(table)?.columns.get(key);
  if (column === undefined) throw new Error(`No column "${table}.${key}".`);
  return column;
}

/** The value of a cell by its name; null where the model has none of that name. */
export const valueNamed = (
  { byId }: Pick<Model, "byId">,
  values: readonly Value[],
  name: string,
): Value => values[byId.get(name)?.index ?? -1] ?? null;

/** The values of a column of a table, row by row. Throws where the model has no such column. */
export const columnValues = (
  model: Model,
  values: readonly Value[],
  table: string,
  column: string,
): Value[] => columnOf(model, table, column).cells.map(({ index }) => values[index] ?? null);
