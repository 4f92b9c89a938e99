import type { Coder } from "../formula/functions/description.js";
import { natives } from "../formula/functions/index.js";
import { conversion } from "../formula/print.js";
import type { Operator, Tree } from "../formula/tree.js";
import { type Area, areaCells } from "../template/area.js";
import { cellOf, columnOf, type Model } from "../template/model.js";

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
      return `${operations[tree.operator]}(${source(model, tree.left)},${source(model, tree.right)})`;
    case "call":
      return call(model, tree.name, tree.args);
    default:
      throw new Error(`A ${tree.kind} cannot be calculated as one value.`);
  }
}

const operations: Readonly<Record<Operator, string>> = {
  "+": "add",
  "-": "subtract",
  "*": "multiply",
  "/": "quotient",
  "^": "raised",
  "&": "joined",
  "=": "equal",
  "<>": "unequal",
  "<": "below",
  "<=": "atMost",
  ">": "above",
  ">=": "atLeast",
};

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
  return isCell(tree) ? `num(${reference(model, tree)})` : `num(${source(model, tree)})`;
}

function condition(model: Model, tree: Tree): string {
  return isCell(tree) ? `bool(${reference(model, tree)})` : `bool(${source(model, tree)})`;
}

/** `v,from,rows`: where a column stands. */
function columnPlace(model: Model, tree: Extract<Tree, { kind: "column" }>): string {
  const { cells } = columnOf(model, tree.table, tree.column);
  return `v,${cells[0]?.index},${cells.length}`;
}

function call(model: Model, name: string, args: readonly Tree[]): string {
  const native = natives.get(name);
  const own = native?.code?.write(args, coderFor(model));
  if (own !== undefined) return own;
  if (native?.run === undefined) throw new Error(`No code for the function ${name}.`);
  const parts = args.map((arg) =>
    native.rowByRow || arg.kind === "column" || arg.kind === "area"
      ? list(model, arg)
      : source(model, arg),
  );
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

/** The cells of a sheet, by the stretches in which they follow one another in the list of values. */
function area(model: Model, tree: Area): string {
  const stretches: [from: number, rows: number][] = [];
  for (const { index } of areaCells(model, tree)) {
    const last = stretches.at(-1);
    if (last !== undefined && last[0] + last[1] === index) last[1] += 1;
    else stretches.push([index, 1]);
  }
  return `[].concat(${stretches.map(([from, rows]) => `column(v,${from},${rows})`).join(",")})`;
}

/**
 * An operator row by row, where a single value stands beside every row. The loop is written
 * out: a shared one would call another operator each time, which engines cannot make fast.
 */
function rowByRow(operation: string, left: string, right: string): string {
  const at = (rows: string) => `${rows}.length===1?${rows}[0]:${rows}[i]`;
  return `((a,b)=>{const c=[],k=a.length>b.length?a.length:b.length;for(let i=0;i<k;i++)c.push(${operation}(${at("a")},${at("b")}));return c;})(${left},${right})`;
}

/** A conversion as the multiplication or division that the workbook shows. */
function opened(tree: Extract<Tree, { kind: "convert" }>): Tree {
  const { operator, by } = conversion(tree.factor);
  return { kind: "binary", operator, left: tree.of, right: { kind: "number", value: by } };
}
