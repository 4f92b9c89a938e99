import { conversion } from "../formula/print.js";
import type { Operator, Tree } from "../formula/tree.js";
import { type Argument, CellError, type Value } from "../formula/value.js";
import { type Cell, cellOf, columnOf, type Model } from "../template/model.js";
import { natives } from "./natives/index.js";
import {
  compare,
  divide,
  finite,
  plainValue,
  power,
  toBoolean,
  toNumber,
  toText,
} from "./operators.js";

type Values = readonly Value[];
type Single = (values: Values) => Value;
type Many = (values: Values) => readonly Value[];

/** A model turned into JavaScript closures: fills in the formula cells of a list of values, in order. */
export type BulkEvaluator = (values: Value[]) => void;

/**
 * Turns the checked formula trees of a model into closures: about a millisecond a job.
 *
 * The evaluator takes a list with a value for each cell of the model (by index; inputs,
 * published and price-book cells given, formula cells of any content) and overwrites the
 * formula cells, all or those of `order`. An error becomes the value of its cell, with the cell it arose in.
 */
export function compileClosures(model: Model, order: readonly Cell[] = model.order): BulkEvaluator {
  const steps = order.map((cell) => {
    const single = new RowCompiler(model, cell).single(cell.native as Tree);
    return { index: cell.index, id: cell.id, single };
  });
  return (values) => {
    for (const { index, id, single } of steps) values[index] = settle(single, values, id);
  };
}

function settle(single: Single, values: Values, id: string): Value {
  try {
    const value = single(values);
    if (typeof value === "number") return finite(value);
    return value === null ? 0 : value;
  } catch (error) {
    if (!(error instanceof CellError)) throw error;
    return error.origin === undefined ? new CellError(error.code, id) : error;
  }
}

class RowCompiler {
  constructor(
    private readonly model: Model,
    private readonly home: Cell,
  ) {}

  single(tree: Tree): Single {
    switch (tree.kind) {
      case "number":
      case "text":
      case "boolean": {
        const { value } = tree;
        return () => value;
      }
      case "scalar":
      case "own": {
        const { index } = cellOf(this.model, tree, this.home.row ?? 0);
        return (values) => {
          const value = values[index] as Value;
          if (value instanceof CellError) throw value;
          return value;
        };
      }
      case "negate": {
        const of = this.single(tree.of);
        return (values) => -toNumber(of(values));
      }
      case "percent": {
        const of = this.single(tree.of);
        return (values) => toNumber(of(values)) / 100;
      }
      case "convert":
        return this.single(opened(tree));
      case "binary":
        return this.binary(tree);
      case "call":
        return this.call(tree.name, tree.args);
      default:
        throw new Error(`A ${tree.kind} cannot be calculated as one value.`);
    }
  }

  private binary(tree: Extract<Tree, { kind: "binary" }>): Single {
    const left = this.single(tree.left);
    const right = this.single(tree.right);
    const operate = operations[tree.operator];
    return (values) => operate(left(values), right(values));
  }

  private call(name: string, args: readonly Tree[]): Single {
    const special = this.lazy(name, args) ?? this.picked(name, args);
    if (special !== undefined) return special;
    const run = natives.get(name);
    if (run === undefined) throw new Error(`No closure for the function ${name}.`);
    const parts = args.map((arg) =>
      name === "SUMPRODUCT" || arg.kind === "column" ? this.many(arg) : this.single(arg),
    );
    // one list for all calls, filled anew at each: functions do not keep their arguments
    const given: Argument[] = parts.map(() => null);
    return (values) => {
      for (let i = 0; i < parts.length; i++) given[i] = (parts[i] as Single | Many)(values);
      return run(given);
    };
  }

  /** The functions that do not look at all of their arguments, or that look at errors. */
  private lazy(name: string, args: readonly Tree[]): Single | undefined {
    if (!["IF", "IFERROR", "CHOOSE", "ISNUMBER", "ISBLANK"].includes(name)) return undefined;
    const parts = args.map((arg) => this.single(arg));
    const [first, second, third] = parts as [Single, Single, Single];
    switch (name) {
      case "IF":
        return (values) => (toBoolean(first(values)) ? second(values) : third(values));
      case "IFERROR":
        return (values) =>
          attempt(
            () => finiteValue(first(values)),
            () => second(values),
          );
      case "ISNUMBER":
        return (values) =>
          attempt(
            () => typeof first(values) === "number",
            () => false,
          );
      case "ISBLANK":
        return (values) =>
          attempt(
            () => first(values) === null,
            () => false,
          );
      default:
        return (values) => {
          const chosen = parts[Math.trunc(toNumber(first(values)))];
          if (chosen === undefined || chosen === first) throw new CellError("#VALUE!");
          return chosen(values);
        };
    }
  }

  /** One value out of a column, which need not be copied for that. */
  private picked(name: string, [first, second]: readonly Tree[]): Single | undefined {
    if (name !== "INDEX" || first?.kind !== "column" || second === undefined) return undefined;
    const { cells } = columnOf(this.model, first.table, first.column);
    const from = (cells[0] as Cell).index;
    const place = this.single(second);
    return (values) => {
      const row = Math.trunc(toNumber(place(values)));
      if (row < 1) throw new CellError("#VALUE!");
      if (row > cells.length) throw new CellError("#REF!");
      return plainValue(values[from + row - 1] as Value);
    };
  }

  /** A whole column, or arithmetic on columns row by row; one list, filled anew at each call. */
  private many(tree: Tree): Many {
    if (tree.kind === "column") {
      const { cells } = columnOf(this.model, tree.table, tree.column);
      const from = (cells[0] as Cell).index;
      const part: Value[] = cells.map(() => null);
      // errors stay in their rows: functions that look past them give a value
      return (values) => {
        for (let i = 0; i < part.length; i++) part[i] = values[from + i] as Value;
        return part;
      };
    }
    if (tree.kind === "convert") return this.many(opened(tree));
    if (tree.kind === "binary") {
      const left = this.many(tree.left);
      const right = this.many(tree.right);
      const operate = operations[tree.operator];
      const result: Value[] = [];
      return (values) => {
        const l = left(values);
        const r = right(values);
        result.length = Math.max(l.length, r.length);
        for (let i = 0; i < result.length; i++) result[i] = operate(pick(l, i), pick(r, i));
        return result;
      };
    }
    if (tree.kind === "negate") {
      const of = this.many(tree.of);
      const result: Value[] = [];
      return (values) => {
        const list = of(values);
        result.length = list.length;
        for (let i = 0; i < list.length; i++) result[i] = -toNumber(list[i] as Value);
        return result;
      };
    }
    const single = this.single(tree);
    const result: Value[] = [null];
    return (values) => {
      result[0] = single(values);
      return result;
    };
  }
}

/** A single value stands beside every row. */
const pick = (values: readonly Value[], i: number): Value =>
  (values.length === 1 ? values[0] : values[i]) as Value;

/** A conversion as the multiplication or division that the workbook shows. */
function opened(tree: Extract<Tree, { kind: "convert" }>): Tree {
  const { operator, by } = conversion(tree.factor);
  return { kind: "binary", operator, left: tree.of, right: { kind: "number", value: by } };
}

const operations: Readonly<Record<Operator, (left: Value, right: Value) => Value>> = {
  "+": (l, r) => finite(toNumber(l) + toNumber(r)),
  "-": (l, r) => finite(toNumber(l) - toNumber(r)),
  "*": (l, r) => finite(toNumber(l) * toNumber(r)),
  "/": (l, r) => divide(toNumber(l), toNumber(r)),
  "^": (l, r) => power(toNumber(l), toNumber(r)),
  "&": (l, r) => toText(l) + toText(r),
  "=": (l, r) => compare(l, r) === 0,
  "<>": (l, r) => compare(l, r) !== 0,
  "<": (l, r) => compare(l, r) < 0,
  "<=": (l, r) => compare(l, r) <= 0,
  ">": (l, r) => compare(l, r) > 0,
  ">=": (l, r) => compare(l, r) >= 0,
};

function attempt(first: () => Value, otherwise: () => Value): Value {
  try {
    return first();
  } catch (error) {
    if (error instanceof CellError) return otherwise();
    throw error;
  }
}

const finiteValue = (value: Value): Value => (typeof value === "number" ? finite(value) : value);
