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
  const { filled } = table;
  if (filled === undefined) return all.filter((row) => holdsSomething(table, row, values));
  const [first] = table.columns.values();
  return all.filter(
    (row) => treeValue(model, first?.cells[row - 1] as Cell, filled.spoken, values) === true,
  );
}

/** Whether a row is in use and worth a look; every row of a table that tells neither is. */
export function rowIsShown(
  model: Model,
  { columns, filled, shown }: Table,
  row: number,
  values: readonly Value[],
): boolean {
  const [first] = columns.values();
  const cell = first?.cells[row - 1] as Cell;
  return [filled, shown].every(
    (condition) =>
      condition === undefined || treeValue(model, cell, condition.spoken, values) === true,
  );
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
