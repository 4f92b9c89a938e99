import { toBoolean, toNumber } from "../formula/arithmetic/operators.js";
import { natives } from "../formula/functions/index.js";
import { conversion } from "../formula/print.js";
import { mapParts, type Reference, type Tree } from "../formula/tree.js";
import { type Argument, CellError, type Value } from "../formula/value.js";
import { areaCells } from "../template/area.js";
import { type Cell, cellOf, columnOf, type Model } from "../template/model.js";
import type { Questions } from "./questions.js";
import { eachRow, operations } from "./runtime.js";

type Call = Extract<Tree, { kind: "call" }>;
type Column = Extract<Reference, { kind: "column" | "area" }>;

/** A part of a formula: its value, and what is left of it to ask. */
interface Part {
  readonly value: Value;
  readonly tree: Tree;
}

/** A part of a formula that is calculated row by row; a single value stands beside every row. */
interface Rows {
  readonly values: readonly Value[];
  readonly tree: Tree;
}

/**
 * Takes the formulas of a job apart into questions on known values.
 *
 * A formula holds where it gives its cell's value from the values of the cells that it reads. Where that is so of
 * every formula, hyperformula would come to the same on the whole sheets: by induction along the order of
 * calculation, in which each cell follows those it reads. So the formulas may be judged one by one, each on the values
 * that the closures found, and so may the parts of a formula, each on the values of its own parts:
 *
 * - What reads the same values and says the same is asked once.
 * - `IF` is one of its branches, by what it means: its condition is asked, then the branch. So in a row that is not in
 *   use what is asked of all its cells is the condition, once.
 * - A function that is ours in hyperformula too (`judge` in its description) is run here, on parts that are asked.
 * - A function that may take whole columns is asked apart from what it stands in, so that what is left works on single
 *   values and goes together with its like.
 *
 * What this walk itself makes of a part (which branch is taken, which row is picked) is the answer that is
 * expected, so that a fault of it ends as a disagreement too.
 */
export class Parter {
  readonly #columns = new Map<string, Rows>();
  readonly #places = new Map<Tree, number>();
  /** By row. */
  readonly #conditions = new Map<Tree, Part[]>();

  constructor(
    private readonly model: Model,
    private readonly values: readonly Value[],
    private readonly questions: Questions,
  ) {}

  /** Asks what is to be asked of a formula cell. */
  ask(cell: Cell): void {
    const value = this.values[cell.index] as Value;
    const part = this.#whole(cell.native as Tree, cell);
    // a formula that passes on a blank gives zero
    if (isSettled(part.tree)) this.questions.mustBe(part.value ?? 0, value, cell);
    else this.questions.ask(part.tree, value, cell);
  }

  /** What is left of a formula; one that runs into an error is asked as it stands. */
  #whole(tree: Tree, cell: Cell): Part {
    try {
      return this.#part(tree, cell);
    } catch (error) {
      if (!(error instanceof CellError)) throw error;
      return { value: error, tree: this.#asItStands(tree, cell) };
    }
  }

  /** With addresses for references, and nothing else changed. */
  #asItStands(tree: Tree, cell: Cell): Tree {
    switch (tree.kind) {
      case "scalar":
      case "own":
        return this.questions.operand(this.#at(tree, cell));
      case "column":
      case "area":
        return this.#column(tree).tree;
      default:
        return mapParts(tree, (part) => this.#asItStands(part, cell));
    }
  }

  /** Throws the error that a part comes to. */
  #part(tree: Tree, cell: Cell): Part {
    switch (tree.kind) {
      case "number":
      case "text":
      case "boolean":
        return { value: tree.value, tree };
      case "scalar":
      case "own":
        return this.#operand(thrown(this.#at(tree, cell)));
      case "negate": {
        const of = this.#part(tree.of, cell);
        return { value: -toNumber(of.value), tree: { kind: "negate", of: of.tree } };
      }
      case "percent": {
        const of = this.#part(tree.of, cell);
        return { value: toNumber(of.value) / 100, tree: { kind: "percent", of: of.tree } };
      }
      case "convert": {
        const of = this.#part(tree.of, cell);
        return { value: converted(of.value, tree.factor), tree: { ...tree, of: of.tree } };
      }
      case "binary": {
        const left = this.#part(tree.left, cell);
        const right = this.#part(tree.right, cell);
        return {
          value: operations[tree.operator](left.value, right.value),
          tree: { ...tree, left: left.tree, right: right.tree },
        };
      }
      case "call":
        return this.#call(tree, cell);
      default:
        throw new Error(`A ${tree.kind} cannot be calculated as one value.`);
    }
  }

  #call(tree: Call, cell: Cell): Part {
    const { name, args } = tree;
    const native = natives.get(name);
    if (name === "IF") return this.#branch(tree, cell);
    if (name === "CHOOSE") return this.#option(tree, cell);
    if (native?.rowByRow) return this.#asked(this.#rowByRow(tree, cell), cell);
    if (native?.ofCell !== undefined || native?.run === undefined)
      return this.#ofErrors(tree, cell);
    const ours = native.judge !== undefined;
    const apart = ours || native.columns !== undefined;
    const parts = args.map((arg) => {
      const part = this.#argument(arg, cell);
      return apart && !("values" in part) ? this.#asked(part, cell) : part;
    });
    const value = thrown(
      native.run(parts.map((part) => ("values" in part ? part.values : part.value))),
    );
    if (ours) return this.#operand(value);
    const made = { value, tree: { ...tree, args: parts.map((part) => part.tree) } };
    return apart ? this.#asked(made, cell) : made;
  }

  #argument(arg: Tree, cell: Cell): Part | (Rows & { value: Argument }) {
    if (arg.kind !== "column" && arg.kind !== "area") return this.#part(arg, cell);
    const rows = this.#column(arg);
    return { ...rows, value: rows.values };
  }

  /** The branch that is taken; of a condition that is neither yes nor no, all that there is. */
  #branch(tree: Call, cell: Cell): Part {
    const [test, yes, no] = tree.args as [Tree, Tree, Tree];
    const condition = this.#condition(test, cell);
    if (typeof condition !== "boolean") {
      const branch = toBoolean(condition) ? yes : no;
      return { value: this.#part(branch, cell).value, tree: this.#asItStands(tree, cell) };
    }
    return this.#part(condition ? yes : no, cell);
  }

  /** A condition, which is asked; that of a row stands in many of its cells, and is worked out once. */
  #condition(tree: Tree, cell: Cell): Value {
    const { row = 0 } = cell;
    const byRow = this.#conditions.get(tree) ?? [];
    this.#conditions.set(tree, byRow);
    byRow[row] ??= this.#asked(this.#part(tree, cell), cell);
    return byRow[row].value;
  }

  /** The option that is chosen. */
  #option({ args }: Call, cell: Cell): Part {
    const [which, ...options] = args as [Tree, ...Tree[]];
    const place = this.#asked(this.#part(which, cell), cell);
    const option = options[Math.trunc(toNumber(place.value)) - 1];
    if (option === undefined) throw new CellError("#VALUE!");
    return this.#part(option, cell);
  }

  /** A function that looks at errors. */
  #ofErrors(tree: Call, cell: Cell): Part {
    const [of] = tree.args as [Tree];
    const asked = this.#asItStands(tree, cell);
    switch (tree.name) {
      case "ISBLANK":
        return { value: this.#errorOr(of, cell) === null, tree: asked };
      case "ISNUMBER":
        return { value: typeof this.#errorOr(of, cell) === "number", tree: asked };
      case "ISERROR":
        return { value: this.#errorOr(of, cell) instanceof CellError, tree: asked };
      default:
        throw new Error(`Nothing is known of the function ${tree.name}.`);
    }
  }

  #errorOr(tree: Tree, cell: Cell): Value {
    try {
      return this.#part(tree, cell).value;
    } catch (error) {
      if (error instanceof CellError) return error;
      throw error;
    }
  }

  #rowByRow(tree: Call, cell: Cell): Part {
    const rows = tree.args.map((arg) => this.#rows(arg, cell));
    const run = natives.get(tree.name)?.run as (args: readonly Argument[]) => Value;
    const value = thrown(run(rows.map(({ values }) => values)));
    return { value, tree: { ...tree, args: rows.map((one) => one.tree) } };
  }

  #rows(tree: Tree, cell: Cell): Rows {
    switch (tree.kind) {
      case "column":
      case "area":
        return this.#column(tree);
      case "convert": {
        const of = this.#rows(tree.of, cell);
        const values = of.values.map((value) => converted(value, tree.factor));
        return { values, tree: { ...tree, of: of.tree } };
      }
      case "negate": {
        const of = this.#rows(tree.of, cell);
        return {
          values: of.values.map((value) => -toNumber(value)),
          tree: { kind: "negate", of: of.tree },
        };
      }
      case "binary": {
        const left = this.#rows(tree.left, cell);
        const right = this.#rows(tree.right, cell);
        const values = eachRow(operations[tree.operator], left.values, right.values);
        return { values, tree: { ...tree, left: left.tree, right: right.tree } };
      }
      default: {
        const part = this.#asked(this.#part(tree, cell), cell);
        return { values: [part.value], tree: part.tree };
      }
    }
  }

  /** A column of values, laid out once. */
  #column(tree: Column): Rows {
    const key = tree.kind === "area" ? `'${tree.sheet}'` : `${tree.table}.${tree.column}`;
    const known = this.#columns.get(key);
    if (known !== undefined) return known;
    const cells =
      tree.kind === "area"
        ? areaCells(this.model, tree)
        : columnOf(this.model, tree.table, tree.column).cells;
    const all = cells.map(({ index }) => this.values[index] as Value);
    // of a whole sheet nothing is asked but whether an error is among its values: of equal ones the first stands for all
    const values = tree.kind === "area" ? [...new Set(all)] : all;
    const made = { values, tree: this.questions.column(values) };
    this.#columns.set(key, made);
    return made;
  }

  #at(tree: Extract<Tree, { kind: "scalar" | "own" }>, cell: Cell): Value {
    const row = tree.kind === "own" ? (cell.row as number) : 0;
    const known = this.#places.get(tree);
    if (known !== undefined) return this.values[known + row] as Value;
    const { index } = cellOf(this.model, tree, row);
    this.#places.set(tree, index - row);
    return this.values[index] as Value;
  }

  #operand(value: Value): Part {
    return { value, tree: this.questions.operand(value) };
  }

  /** The part with its own question asked, and its answer in its place. */
  #asked(part: Part, cell: Cell): Part {
    if (isSettled(part.tree)) return part;
    this.#ask(part, cell);
    return this.#operand(part.value);
  }

  #ask({ value, tree }: { readonly value: Argument; readonly tree: Tree }, cell: Cell): void {
    if (!isSettled(tree)) this.questions.ask(tree, value as Value, cell);
  }
}

/** Nothing is left to ask of a value or of words. */
const isSettled = ({ kind }: Tree): boolean =>
  kind === "scalar" || kind === "number" || kind === "text" || kind === "boolean";

/** Throws an error value. */
function thrown(value: Value): Value {
  if (value instanceof CellError) throw value;
  return value;
}

const factors = new Map<number, ReturnType<typeof conversion>>();

function converted(value: Value, factor: number): Value {
  const known = factors.get(factor) ?? conversion(factor);
  factors.set(factor, known);
  return operations[known.operator](value, known.by);
}
