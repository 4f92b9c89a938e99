import { rowsInUse } from "../evaluate/rows-in-use.js";
import { type Arguments, evaluator } from "../evaluate/tree-value.js";
import { print } from "../formula/print.js";
import { mapParts, type Tree, walk } from "../formula/tree.js";
import type { Value } from "../formula/value.js";
import { type Cell, cellOf, columnOf, type Model } from "../template/model.js";
import { spokenName } from "../template/printed.js";
import { styleOf } from "./number-style.js";
import { type NumberStyle, type Rounding, roundings, write, writeColumn } from "./written.js";

/** A formula in numbers: whole, and with long columns cut short. */
export interface InNumbers {
  readonly numbers: string;
  readonly brief: string;
}

/** What a formula reads: the values of a job, and within a named formula its parameters. */
export interface Readings {
  readonly values: readonly Value[];
  readonly args?: Arguments;
  readonly styles?: ReadonlyMap<string, NumberStyle>;
}

/** Columns longer than this are cut short in the brief form. */
const mostRows = 6;

/** Writes a tree for people: by name, `6 [in]` for a number with a unit. */
export function inNames(tree: Tree): string {
  return printed(tree, (node) => (node.kind === "parameter" ? node.name : spokenName(node)));
}

/**
 * Writes a formula with numbers in place of names, rounded as far as it can be while the formula
 * as written still gives the result as shown.
 *
 * @param show a result as people see it
 */
export function inNumbers(
  model: Model,
  home: Cell,
  tree: Tree,
  readings: Readings,
  show: (value: Value) => string,
): InNumbers {
  const { values, args } = readings;
  const wanted = show(evaluator(model, home, tree, args)(values));
  const last = lastRowInUse(model, tree, values);
  const cuts = last === undefined ? [undefined] : [last, undefined];
  for (const rows of cuts) {
    const evaluate = evaluator(model, home, tree, args, rows);
    if (show(evaluate(values)) !== wanted) continue;
    for (const rounding of roundings) {
      const rounded = roundedReadings(model, home, tree, readings, rounding);
      const again =
        rounded.args.size === 0 ? evaluate : evaluator(model, home, tree, rounded.args, rows);
      const found = again(rounded.values);
      if (show(found) !== wanted) continue;
      return {
        numbers: spelled(model, home, tree, readings, rounding, rows, "text"),
        brief: spelled(model, home, tree, readings, rounding, rows, "brief"),
      };
    }
  }
  throw new Error(`The formula of ${home.id} does not give its own value again.`);
}

/** The last row that any of the formula's columns uses. */
function lastRowInUse(model: Model, tree: Tree, values: readonly Value[]): number | undefined {
  const tables = new Set<string>();
  for (const node of walk(tree)) if (node.kind === "column") tables.add(node.table);
  if (tables.size === 0) return undefined;
  return Math.max(1, ...[...tables].map((name) => rowsInUse(model, name, values).at(-1) ?? 1));
}

function roundedReadings(
  model: Model,
  home: Cell,
  tree: Tree,
  { values, args = new Map(), styles = new Map() }: Readings,
  rounding: Rounding,
): { values: Value[]; args: Arguments } {
  const rounded = [...values];
  for (const node of walk(tree)) {
    if (node.kind !== "scalar" && node.kind !== "own" && node.kind !== "column") continue;
    const target = cellOf(model, node, home.row ?? 0);
    const cells =
      node.kind === "column" ? columnOf(model, node.table, node.column).cells : [target];
    const style = styleOf(target, model.system);
    for (const { index } of cells) {
      rounded[index] = write(values[index] ?? null, style, rounding).value;
    }
  }
  const roundedArgs = new Map(
    [...args].map(([name, value]) => [
      name,
      write(value, styles.get(name) as NumberStyle, rounding).value,
    ]),
  );
  return { values: rounded, args: roundedArgs };
}

function spelled(
  model: Model,
  home: Cell,
  tree: Tree,
  { values, args, styles }: Readings,
  rounding: Rounding,
  rows: number | undefined,
  form: "text" | "brief",
): string {
  return printed(tree, (node) => {
    if (node.kind === "parameter") {
      const style = styles?.get(node.name) as NumberStyle;
      return write(args?.get(node.name) ?? null, style, rounding).text;
    }
    // the cells of a sheet are not spelled out: only errors count among them
    if (node.kind === "area") return spokenName(node);
    const target = cellOf(model, node, home.row ?? 0);
    const style = styleOf(target, model.system);
    if (node.kind !== "column") return write(values[target.index] ?? null, style, rounding).text;
    const { cells } = columnOf(model, node.table, node.column);
    const column = cells.slice(0, rows).map(({ index }) => values[index] ?? null);
    return writeColumn(column, style, rounding, mostRows)[form];
  });
}

type Leaf = Extract<Tree, { kind: "scalar" | "own" | "column" | "area" | "parameter" }>;

function printed(tree: Tree, spell: (leaf: Leaf) => string): string {
  return print(withText(tree, spell), {
    prefixed: false,
    exponent: "e",
    quotes: "doubled",
    reference: (reference) => (reference.kind === "scalar" ? reference.name : ""),
  });
}

/** Puts the text of each leaf in its place, as a name that prints as it is. */
function withText(tree: Tree, spell: (leaf: Leaf) => string): Tree {
  switch (tree.kind) {
    case "number":
      return tree.unit === undefined
        ? tree
        : { kind: "scalar", name: `${tree.value} [${tree.unit}]` };
    case "scalar":
    case "own":
    case "column":
    case "area":
    case "parameter":
      return { kind: "scalar", name: spell(tree) };
    default:
      return mapParts(tree, (part) => withText(part, spell));
  }
}
