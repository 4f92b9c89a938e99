import { conversion } from "../formula/print.js";
import type { Operator, Tree } from "../formula/tree.js";
import { type Area, areaCells } from "../template/area.js";
import { cellOf, columnOf, type Model } from "../template/model.js";
import { natives } from "./natives/index.js";
import type { runtime } from "./runtime.js";

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

const operations: Readonly<Record<Operator, keyof typeof runtime>> = {
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
  const special = specials[name]?.(model, args);
  if (special !== undefined) return special;
  if (!natives.has(name)) throw new Error(`No code for the function ${name}.`);
  const parts = args.map((arg) =>
    name === "SUMPRODUCT" || arg.kind === "column" || arg.kind === "area"
      ? list(model, arg)
      : source(model, arg),
  );
  return `n[${JSON.stringify(name)}]([${parts.join(",")}])`;
}

type Special = (model: Model, args: readonly Tree[]) => string | undefined;

const later = (model: Model, tree: Tree) => `()=>${source(model, tree)}`;

/** Functions that do not look at all of their arguments, that look at errors, or that need no copy of a column. */
const specials: Readonly<Record<string, Special>> = {
  IF: (model, [test, then, otherwise]) =>
    `(${condition(model, test as Tree)}?${source(model, then as Tree)}:${source(model, otherwise as Tree)})`,
  CHOOSE: (model, [which, ...choices]) =>
    `choose(${source(model, which as Tree)},[${choices.map((one) => later(model, one)).join(",")}])`,
  ISERROR: (model, [of]) =>
    isCell(of) ? `isError(${reference(model, of)})` : `fails(()=>${source(model, of as Tree)})`,
  ISNUMBER: (model, [of]) => {
    if (isCell(of)) return `(typeof ${reference(model, of)}==="number")`;
    return `holds(()=>typeof ${source(model, of as Tree)}==="number")`;
  },
  ISBLANK: (model, [of]) => {
    if (isCell(of)) return `(${reference(model, of)}===null)`;
    return `holds(()=>${source(model, of as Tree)}===null)`;
  },
  INDEX: (model, [of, place]) =>
    of?.kind === "column"
      ? `index(${columnPlace(model, of)},${source(model, place as Tree)})`
      : undefined,
  MATCH: (model, [wanted, of, how]) =>
    of?.kind === "column" && how?.kind === "number" && how.value === 0
      ? `match(${columnPlace(model, of)},${source(model, wanted as Tree)})`
      : undefined,
  MAX: (model, args) => ofTwo("larger", model, args),
  MIN: (model, args) => ofTwo("smaller", model, args),
  ABS: (model, [of]) => `Math.abs(${number(model, of as Tree)})`,
  SQRT: (model, [of]) => `finite(Math.sqrt(${number(model, of as Tree)}))`,
  EXP: (model, [of]) => `finite(Math.exp(${number(model, of as Tree)}))`,
  LN: (model, [of]) => `finite(Math.log(${number(model, of as Tree)}))`,
  SUM: (model, args) => {
    const [of] = args;
    return args.length === 1 && of?.kind === "column"
      ? `sum(${columnPlace(model, of)})`
      : undefined;
  },
};

function ofTwo(name: string, model: Model, args: readonly Tree[]): string | undefined {
  if (args.length !== 2 || args.some(({ kind }) => kind === "column")) return undefined;
  return `${name}(${args.map((arg) => source(model, arg)).join(",")})`;
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
