import { type Dimension, dimensionless, multiplyDimensions } from "../../units/dimension.js";
import { finite, type Plain, plainValue, toNumber } from "../arithmetic/operators.js";
import type { Tree } from "../tree.js";
import { describeType, textType } from "../type.js";
import { type Argument, CellError, type Value } from "../value.js";
import { allValues, countAt, ensure, listAt } from "./arguments.js";
import {
  type Check,
  type Code,
  type Coder,
  isMany,
  type NativeFunction,
  native,
} from "./description.js";
import { KeptColumns } from "./kept-column.js";
import { rowsAlike } from "./rows-alike.js";
import { alike, every, firstKeeps, firstOnly } from "./rules.js";

export const isNumber = (value: Plain): value is number => typeof value === "number";

/** The numbers among the arguments; blanks, texts and booleans do not count, as in referenced cells. */
const numbersIn = (args: readonly Argument[]) => allValues(args).filter(isNumber);

function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return finite(total);
}

export const least = (values: readonly number[]) =>
  values.length === 0 ? 0 : values.reduce((low, x) => Math.min(low, x));

export const most = (values: readonly number[]) =>
  values.length === 0 ? 0 : values.reduce((high, x) => Math.max(high, x));

/** The sum of products place by place; what is no number counts as zero. */
function sumOfProducts(args: readonly Argument[]): number {
  const lists: (readonly Plain[])[] = [];
  for (let i = 0; i < args.length; i++) lists.push(listAt(args, i));
  const length = lists[0]?.length ?? 0;
  for (const list of lists) if (list.length !== length) throw new CellError("#VALUE!");
  let total = 0;
  for (let row = 0; row < length; row++) {
    let product = 1;
    for (const list of lists) {
      const value = list[row] as Plain;
      product *= isNumber(value) ? value : 0;
    }
    total += product;
  }
  return finite(total);
}

/** The value at a place, from 1, among the numbers of a range put in order: from the least, or from the most. */
function ranked(args: readonly Argument[], from: "least" | "most"): number {
  return inOrder(numbersIn(args.slice(0, 1)), countAt(args, 1), from);
}

/** The value at a place among numbers in order. */
function placed(ordered: Float64Array, place: number, from: "least" | "most"): number {
  ensure(place >= 1 && place <= ordered.length);
  return ordered[from === "least" ? place - 1 : ordered.length - place] as number;
}

const inOrder = (numbers: readonly number[], place: number, from: "least" | "most") =>
  placed(Float64Array.from(numbers).sort(), place, from);

/** The numbers of a column from the least on, or its first error. The rows of a list ask for one column, a row after the other. */
const sortedColumns = new KeptColumns((column): Float64Array | CellError => {
  const error = column.find((value) => value instanceof CellError);
  if (error !== undefined) return error as CellError;
  return Float64Array.from(column.filter((value) => typeof value === "number")).sort();
});

const columnRank =
  (which: "least" | "most") =>
  (values: readonly Value[], from: number, length: number, place: Value): number => {
    const ordered = sortedColumns.of(values, from, length);
    if (ordered instanceof CellError) throw ordered;
    return placed(ordered, Math.trunc(toNumber(place)), which);
  };

/** A place in a column, which need not be copied for that. */
const rankCode = (called: string, which: "least" | "most"): Code => ({
  write: ([of, place], { column, value }) => {
    const found = column(of);
    const alone = place !== undefined && !isMany(place);
    return found !== undefined && alone ? `${called}(${found},${value(place)})` : undefined;
  },
  calls: { [called]: columnRank(which) },
});

/** The sum of a column without a copy: what is no number does not count. */
function columnSum(values: readonly Value[], from: number, length: number): number {
  let total = 0;
  for (let i = from; i < from + length; i++) {
    const value = values[i] as Value;
    if (typeof value === "number") total += value;
    // of all values only errors and blanks are objects
    else if (typeof value === "object") plainValue(value);
  }
  return finite(total);
}

/** The same of the cells of a sheet, by the stretches in which they stand: from, rows, from, rows and so on. */
function areaSum(values: readonly Value[], stretches: readonly number[]): number {
  let total = 0;
  for (let i = 0; i < stretches.length; i += 2) {
    const from = stretches[i] as number;
    total += columnSum(values, from, stretches[i + 1] as number);
  }
  return finite(total);
}

/** The sum of all cells of a sheet is no figure to go on with: it counts as a text. */
const sumOf: Check = (args, rules) => {
  const [only] = args;
  return args.length === 1 && only?.tree.kind === "area"
    ? { args: [only.tree], type: textType }
    : alike(args, rules);
};

const products: Check = (args, rules) => {
  let dimension: Dimension = dimensionless;
  let size = 1;
  for (const { type } of args) {
    if (type.kind === "text" || type.kind === "yesno") {
      rules.fail(`it adds up numbers, not ${describeType(type)}: write (condition)*1`);
    }
    if (type.kind !== "number") continue;
    dimension = multiplyDimensions(dimension, type.dimension);
    size *= type.size;
  }
  return {
    args: args.map((arg) => arg.tree),
    type: { kind: "number", dimension, size, range: false },
  };
};

const largest: NativeFunction = (args) => most(numbersIn(args));
const smallest: NativeFunction = (args) => least(numbersIn(args));

/** Of two values that are numbers, or as the function has it. */
const ofTwo =
  (calculate: (a: number, b: number) => number, otherwise: NativeFunction) =>
  (a: Value, b: Value): Value =>
    typeof a === "number" && typeof b === "number" ? calculate(a, b) : otherwise([a, b]);

const twoValues =
  (called: string) =>
  (args: readonly Tree[], { value }: Coder): string | undefined =>
    args.length === 2 && !args.some(isMany) ? `${called}(${args.map(value).join(",")})` : undefined;

/** Functions over ranges. */
export const aggregates = [
  native("SUM", [1, 60], {
    check: sumOf,
    columns: every,
    area: true,
    run: (args) => sum(numbersIn(args)),
    code: {
      write: (args, { area, column }) => {
        if (args.length !== 1) return undefined;
        const [place, stretches] = [column(args[0]), area(args[0])];
        if (place !== undefined) return `columnSum(${place})`;
        return stretches === undefined ? undefined : `areaSum(${stretches})`;
      },
      calls: { areaSum, columnSum },
    },
  }),
  native("MIN", [1, 60], {
    check: alike,
    columns: every,
    run: smallest,
    code: { write: twoValues("smaller"), calls: { smaller: ofTwo(Math.min, smallest) } },
  }),
  native("MAX", [1, 60], {
    check: alike,
    columns: every,
    run: largest,
    code: { write: twoValues("larger"), calls: { larger: ofTwo(Math.max, largest) } },
  }),
  native("SUMPRODUCT", [1, 10], {
    check: products,
    columns: every,
    rowByRow: true,
    run: sumOfProducts,
    code: rowsAlike,
    judge: { takes: ["range"], again: 1, since: "TRUE counts as 1" },
  }),
  native("SMALL", [2], {
    check: firstKeeps,
    columns: firstOnly,
    run: (args) => ranked(args, "least"),
    code: rankCode("fromLeast", "least"),
  }),
  native("LARGE", [2], {
    check: firstKeeps,
    columns: firstOnly,
    run: (args) => ranked(args, "most"),
    code: rankCode("fromMost", "most"),
  }),
];
