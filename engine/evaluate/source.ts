import { type Coder, isMany } from "../formula/functions/description.js";
import { natives } from "../formula/functions/index.js";
import type { Tree } from "../formula/tree.js";
import { type Area, areaCells } from "../template/area.js";
import { cellOf, columnOf, type Model } from "../template/model.js";
import { kindOf } from "./code-kinds.js";
import { runsOf } from "./links.js";
import { betweenNumbers, opened, operations } from "./operations.js";
import { productsByRow, type RowWriter } from "./row-loop.js";

/**
 * A checked formula tree as a JavaScript expression over `v`, the values of a job, and `r`,
 * the row of the table. Names come in as numbers, texts as JSON, functions from the list of
 * natives (`n`) and of the runtime: nothing that a user writes is run.
 *
 * Each side of an operator and each argument is evaluated, from left to right, before it is
 * converted: with several errors in a formula it is the first that shows.
 */
export function source(model: Model, tree: Tree): string {
  switch (tree.kind) {
    case "number":
      return tree.value < 0 ? `(${tree.value})` : String(tree.value);
    case "text":
      return JSON.stringify(tree.value);
    case "boolean":
      return String(tree.value);
    case "scalar":
    case "own":
      return `get(${reference(model, tree)})`;
    case "negate":
      return `(-${number(model, tree.of)})`;
    case "percent":
      return `(${number(model, tree.of)}/100)`;
    case "convert":
      return source(model, opened(tree));
    case "binary":
      return binary(model, tree);
    case "call":
      return call(model, tree.name, tree.args);
    default:
      throw new Error(`A ${tree.kind} cannot be calculated as one value.`);
  }
}

/** Between what are numbers for sure, as JavaScript writes it; else by a function that asks what both sides are. */
function binary(model: Model, tree: Extract<Tree, { kind: "binary" }>): string {
  const { operator, left, right } = tree;
  if (operator === "&" || [left, right].some((side) => kindOf(model, side) !== "number")) {
    return `${operations[operator]}(${source(model, left)},${source(model, right)})`;
  }
  return betweenNumbers(operator, number(model, left), number(model, right));
}

type CellReference = Extract<Tree, { kind: "scalar" | "own" }>;

/** The value of a cell as it stands, errors too. */
function reference(model: Model, tree: CellReference): string {
  if (tree.kind === "scalar") return `v[${cellOf(model, tree, 0).index}]`;
  const [first] = columnOf(model, tree.table, tree.column).cells;
  const offset = (first?.index as number) - 1 - tree.back;
  return `v[r+${offset}]`;
}

const isCell = (tree: Tree | undefined): tree is CellReference =>
  tree?.kind === "scalar" || tree?.kind === "own";

function number(model: Model, tree: Tree): string {
  if (isCell(tree)) return `num(${reference(model, tree)})`;
  const written = source(model, tree);
  return kindOf(model, tree) === "number" ? written : `num(${written})`;
}

function condition(model: Model, tree: Tree): string {
  if (isCell(tree)) return `bool(${reference(model, tree)})`;
  const written = source(model, tree);
  return kindOf(model, tree) === "yesno" ? written : `bool(${written})`;
}

/** `v,from,rows`: where a column stands. */
function columnPlace(model: Model, tree: Extract<Tree, { kind: "column" }>): string {
  const { cells } = columnOf(model, tree.table, tree.column);
  return `v,${cells[0]?.index},${cells.length}`;
}

function call(model: Model, name: string, args: readonly Tree[]): string {
  const all = name === "AND" ? "&" : name === "OR" ? "|" : undefined;
  if (all !== undefined && args.every((arg) => !isMany(arg) && kindOf(model, arg) === "yesno")) {
    // every condition is looked at: an error in any of them is one of the whole
    return `((${args.map((arg) => source(model, arg)).join(all)})!=0)`;
  }
  const native = natives.get(name);
  const own = native?.code?.write(args, coderFor(model));
  if (own !== undefined) return own;
  if (native?.rowByRow) return productsByRow(args, rowWriter(model), listed(model, name, args));
  if (native?.run === undefined) throw new Error(`No code for the function ${name}.`);
  return listed(model, name, args);
}

/** A function of the list of its arguments. */
function listed(model: Model, name: string, args: readonly Tree[]): string {
  const byRow = natives.get(name)?.rowByRow;
  const parts = args.map((arg) => (byRow || isMany(arg) ? list(model, arg) : source(model, arg)));
  return `n[${JSON.stringify(name)}]([${parts.join(",")}])`;
}

/** How a function's own code asks for its arguments. */
function coderFor(model: Model): Coder {
  return {
    value: (tree) => source(model, tree as Tree),
    number: (tree) => number(model, tree as Tree),
    condition: (tree) => condition(model, tree as Tree),
    cell: (tree) => (isCell(tree) ? reference(model, tree) : undefined),
    column: (tree) => (tree?.kind === "column" ? columnPlace(model, tree) : undefined),
    area: (tree) => (tree?.kind === "area" ? `v,[${stretches(model, tree)}]` : undefined),
  };
}

/** A whole column, or arithmetic on columns row by row. */
function list(model: Model, tree: Tree): string {
  switch (tree.kind) {
    case "column":
      // errors stay in their rows: functions that look past them give a value
      return `column(${columnPlace(model, tree)})`;
    case "area":
      return area(model, tree);
    case "convert":
      return list(model, opened(tree));
    case "binary":
      return rowByRow(operations[tree.operator], list(model, tree.left), list(model, tree.right));
    case "negate":
      return `negatedRows(${list(model, tree.of)})`;
    default:
      return `[${source(model, tree)}]`;
  }
}

function area(model: Model, tree: Area): string {
  const all = stretches(model, tree);
  return `[].concat(${all.map(([from, rows]) => `column(v,${from},${rows})`).join(",")})`;
}

/** The cells of a sheet, by the stretches in which they follow one another in the list of values. */
const stretches = (model: Model, tree: Area) => runsOf(areaCells(model, tree));

/** An operator row by row, where a single value stands beside every row. */
const rowByRow = (operation: string, left: string, right: string): string =>
  `eachRow(${operation},${left},${right})`;

/** How the trees of a loop over rows are written. */
const rowWriter = (model: Model): RowWriter => ({
  single: (tree) => ({ code: source(model, tree), kind: kindOf(model, tree) ?? "any" }),
  place: (tree) => {
    const { cells } = columnOf(model, tree.table, tree.column);
    const kind = kindOf(model, tree) ?? "any";
    return { from: cells[0]?.index as number, rows: cells.length, kind };
  },
});
