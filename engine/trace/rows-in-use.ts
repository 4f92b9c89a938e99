import type { Tree } from "../formula/tree.js";
import type { Value } from "../formula/value.js";
import type { Cell, Model, Table } from "../template/model.js";
import { treeValue } from "./tree-value.js";

const known = new WeakMap<readonly Value[], Map<string, readonly number[]>>();

/** The rows of a table, from 1, that a job uses; worked out once for a list of values. */
export function rowsInUse(model: Model, name: string, values: readonly Value[]): readonly number[] {
  const tables = known.get(values) ?? new Map<string, readonly number[]>();
  known.set(values, tables);
  const rows = tables.get(name) ?? findRows(model, name, values);
  tables.set(name, rows);
  return rows;
}

function findRows(model: Model, name: string, values: readonly Value[]): number[] {
  const table = model.tables.get(name);
  if (table === undefined) return [];
  const all = Array.from({ length: table.block.rows }, (_, i) => i + 1);
  const sample = table.block.filled === undefined ? undefined : wrapped(table);
  if (sample === undefined) return all.filter((row) => holdsSomething(table, row, values));
  return all.filter((row) => {
    const home = sample[row - 1] as Cell;
    const { condition } = unwrapped(model, home) as { condition: Tree };
    return treeValue(model, home, condition, values) === true;
  });
}

/** A formula column of the table; each of its formulas stands within `IF(filled, …)`. */
function wrapped(table: Table): readonly Cell[] | undefined {
  return [...table.columns.values()].find(({ cells }) => cells[0]?.spoken !== undefined)?.cells;
}

/** The condition and the formula proper of a row that the compiler wrapped in `IF(filled, …)`. */
export function unwrapped(
  model: Model,
  cell: Cell,
): { condition: Tree; formula: Tree } | undefined {
  const { spoken, table } = cell;
  if (table === undefined || model.tables.get(table)?.block.filled === undefined) return undefined;
  if (spoken?.kind !== "call") return undefined;
  const [condition, formula] = spoken.args as [Tree, Tree, Tree];
  return { condition, formula };
}

function holdsSomething(table: Table, row: number, values: readonly Value[]): boolean {
  return (
    [...table.columns.values()].some(({ cells, declaration }) => {
      if (declaration.kind === "calc" || declaration.kind === "check") return false;
      const value = values[(cells[row - 1] as Cell).index];
      return value !== null && value !== undefined && value !== "";
    }) ||
    ![...table.columns.values()].some(
      ({ declaration: { kind } }) => kind !== "calc" && kind !== "check",
    )
  );
}
