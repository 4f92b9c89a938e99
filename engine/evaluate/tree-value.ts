import { Inliner } from "../formula/inline.js";
import { mapParts, type Tree, walk } from "../formula/tree.js";
import { CellError, type Value } from "../formula/value.js";
import type { Cell, Model, Table } from "../template/model.js";
import { compileTree } from "./closures.js";

const inliners = new WeakMap<Model, Inliner>();

export function inlinerOf(model: Model): Inliner {
  const known = inliners.get(model);
  if (known !== undefined) return known;
  const made = new Inliner(model.formulas, model.system);
  inliners.set(model, made);
  return made;
}

/** Values of the parameters of a named formula that is being shown. */
export type Arguments = ReadonlyMap<string, Value>;

type TreeFunction = ReturnType<typeof compileTree>;

const functions = new WeakMap<Model, WeakMap<Tree, TreeFunction>>();

/** A tree as a function; the rows of a table ask the same of their cells: it is compiled once. */
export function treeFunction(model: Model, tree: Tree): TreeFunction {
  const known = functions.get(model) ?? new WeakMap<Tree, TreeFunction>();
  functions.set(model, known);
  const made = known.get(tree) ?? compileTree(model, inlinerOf(model).open(tree));
  known.set(tree, made);
  return made;
}

/**
 * A function that evaluates a tree, named formulas and all, from within the row of a cell, for a
 * list of values. With `rows`, whole columns end after that many rows.
 */
export function evaluator(
  model: Model,
  { row = 0, id }: Cell,
  tree: Tree,
  args: Arguments = new Map(),
  rows?: number,
): (values: readonly Value[]) => Value {
  if (args.size === 0 && rows === undefined) {
    const run = treeFunction(model, tree);
    return (values) => run(values, row, id);
  }
  const native = inlinerOf(model).open(withArguments(tree, args));
  const seen = rows === undefined ? model : { ...model, tables: cutTables(model, native, rows) };
  const run = compileTree(seen, native);
  return (values) => run(values, row, id);
}

/** The value of a tree from within the row of a cell. */
export function treeValue(
  model: Model,
  home: Cell,
  tree: Tree,
  values: readonly Value[],
  args?: Arguments,
): Value {
  return evaluator(model, home, tree, args)(values);
}

function withArguments(tree: Tree, args: Arguments): Tree {
  if (tree.kind !== "parameter") return mapParts(tree, (part) => withArguments(part, args));
  const value = args.get(tree.name) ?? null;
  if (typeof value === "string") return { kind: "text", value };
  if (typeof value === "boolean") return { kind: "boolean", value };
  // an error divides by zero again; a blank counts as zero
  if (value instanceof CellError) {
    const zero: Tree = { kind: "number", value: 0 };
    return { kind: "binary", operator: "/", left: zero, right: zero };
  }
  return { kind: "number", value: value ?? 0 };
}

function cutTables(model: Model, tree: Tree, rows: number): ReadonlyMap<string, Table> {
  const tables = new Map(model.tables);
  for (const node of walk(tree)) {
    if (node.kind !== "column") continue;
    const table = tables.get(node.table) as Table;
    const columns = new Map(table.columns);
    const column = columns.get(node.column);
    if (column === undefined || column.cells.length <= rows) continue;
    columns.set(node.column, { ...column, cells: column.cells.slice(0, rows) });
    tables.set(node.table, { ...table, columns });
  }
  return tables;
}
