import { type Arguments, inlinerOf, treeValue } from "../evaluate/tree-value.js";
import { looseColumn } from "../formula/check.js";
import { isColumn, takesColumn } from "../formula/named-formula.js";
import { partsOf, type Tree } from "../formula/tree.js";
import { CellError, type Value } from "../formula/value.js";
import { areaCells } from "../template/area.js";
import { type Cell, cellOf, columnOf, type Model } from "../template/model.js";
import { inNames } from "./numbers.js";

/** What a formula is made of. */
export type Part =
  | { readonly kind: "cell"; readonly cell: Cell }
  | { readonly kind: "column"; readonly table: string; readonly column: string }
  | CallPart;

/** A call of a named formula; `args` holds the parameters of the formula it stands in. */
export interface CallPart {
  readonly kind: "call";
  readonly call: Extract<Tree, { kind: "call" }>;
  readonly args?: Arguments;
}

/**
 * The cells, columns and calls of named formulas in a formula, in the order of reading, each once.
 * Of a column that INDEX looks up, only the cell that was found counts, of an IF only the branch taken,
 * of all cells of a sheet only those in which an error arose.
 */
export function partsOfFormula(
  model: Model,
  home: Cell,
  tree: Tree,
  values: readonly Value[],
  args?: Arguments,
): Part[] {
  const parts = new Map<string, Part>();
  const add = (key: string, part: Part) => {
    if (!parts.has(key)) parts.set(key, part);
  };
  const visit = (node: Tree): void => {
    if (node.kind === "scalar" || node.kind === "own") {
      const cell = cellOf(model, node, home.row ?? 0);
      add(cell.id, { kind: "cell", cell });
      return;
    }
    if (node.kind === "column") {
      const { table, column } = node;
      add(`${table}.${column}`, { kind: "column", table, column });
      return;
    }
    if (node.kind === "area") {
      for (const cell of areaCells(model, node)) {
        const value = values[cell.index];
        if (value instanceof CellError && value.origin === cell.id)
          add(cell.id, { kind: "cell", cell });
      }
      return;
    }
    const own = node.kind === "call" ? model.formulas.get(node.name) : undefined;
    if (own !== undefined && (takesColumn(own) || goesThroughRows(model, node))) {
      visit(inlinerOf(model).open(node));
      return;
    }
    if (node.kind === "call" && own !== undefined) {
      const call = { kind: "call", call: node } as const;
      add(inNames(node), args === undefined ? call : { ...call, args });
    }
    const taken = takenBranch(model, home, node, values, args);
    if (taken !== undefined) {
      for (const part of taken) visit(part);
      return;
    }
    const found = lookedUp(model, home, node, values, args);
    if (found !== undefined) add(found.id, { kind: "cell", cell: found });
    for (const part of partsOf(node)) {
      if (found === undefined || part.kind !== "column") visit(part);
    }
  };
  visit(tree);
  return [...parts.values()];
}

/** Is it worked out row by row? A call that is, is shown by what it opens to, as a look-up is. */
function goesThroughRows(model: Model, tree: Tree): boolean {
  if (tree.kind === "column") return true;
  if (tree.kind !== "call") return partsOf(tree).some((part) => goesThroughRows(model, part));
  const own = model.formulas.get(tree.name);
  if (own === undefined) return false;
  return own.parameters.some(
    ({ measure }, i) => !isColumn(measure) && goesThroughRows(model, tree.args[i] as Tree),
  );
}

/** Of an IF, its condition and the branch that it takes. */
function takenBranch(
  model: Model,
  home: Cell,
  node: Tree,
  values: readonly Value[],
  args: Arguments | undefined,
): readonly Tree[] | undefined {
  if (node.kind !== "call" || node.name !== "IF") return undefined;
  const [condition, yes, no] = node.args as [Tree, Tree, Tree];
  // within SUMPRODUCT a condition may be a whole column
  if (looseColumn(condition)) return undefined;
  const holds = treeValue(model, home, condition, values, args);
  return typeof holds === "boolean" ? [condition, holds ? yes : no] : undefined;
}

/** The cell that `INDEX(column, place)` gives. */
function lookedUp(
  model: Model,
  home: Cell,
  node: Tree,
  values: readonly Value[],
  args: Arguments | undefined,
): Cell | undefined {
  if (node.kind !== "call" || node.name !== "INDEX") return undefined;
  const [column, place] = node.args as [Tree, Tree];
  if (column.kind !== "column") return undefined;
  const row = treeValue(model, home, place, values, args);
  if (typeof row !== "number") return undefined;
  return columnOf(model, column.table, column.column).cells[Math.trunc(row) - 1];
}
