import { type Argument, CellError, type Value } from "../../formula/value.js";
import { finite, type Plain, toBoolean } from "../operators.js";
import {
  allValues,
  countAt,
  ensure,
  isRange,
  listAt,
  type NativeFunction,
  rowsAt,
  valueAt,
} from "./arguments.js";

const isNumber = (value: Plain): value is number => typeof value === "number";

/** The numbers among the arguments; blanks, texts and booleans do not count, as in referenced cells. */
const numbersIn = (args: readonly Argument[]) => allValues(args).filter(isNumber);

const sum = (values: readonly number[]) => finite(values.reduce((total, x) => total + x, 0));

const least = (values: readonly number[]) =>
  values.length === 0 ? 0 : values.reduce((low, x) => Math.min(low, x));

const most = (values: readonly number[]) =>
  values.length === 0 ? 0 : values.reduce((high, x) => Math.max(high, x));

/** The sum of products place by place; what is no number counts as zero. */
function sumOfProducts(args: readonly Argument[]): number {
  const lists = args.map((_, index) => listAt(args, index));
  const length = lists[0]?.length ?? 0;
  if (lists.some((list) => list.length !== length)) throw new CellError("#VALUE!");
  const productAt = (row: number) =>
    lists.reduce((product, list) => {
      const value = list[row] as Plain;
      return product * (isNumber(value) ? value : 0);
    }, 1);
  return sum(Array.from({ length }, (_, row) => productAt(row)));
}

/** The value at a place, from 1, among the numbers of a range put in order. */
function ranked(args: readonly Argument[], order: (a: number, b: number) => number): number {
  const values = numbersIn(args.slice(0, 1)).sort(order);
  const place = countAt(args, 1);
  ensure(place >= 1 && place <= values.length);
  return values[place - 1] as number;
}

/** The conditions among the arguments: blanks and, in ranges, texts do not count. */
function conditionsIn(args: readonly Argument[]): boolean[] {
  const counted = args.flatMap((argument): readonly Value[] =>
    isRange(argument) ? argument.filter((value) => typeof value !== "string") : [argument],
  );
  const conditions = counted.filter((value) => value !== null).map(toBoolean);
  if (conditions.length === 0) throw new CellError("#VALUE!");
  return conditions;
}

/** Functions over ranges. */
export const aggregates: Readonly<Record<string, NativeFunction>> = {
  SUM: (args) => sum(numbersIn(args)),
  MIN: (args) => least(numbersIn(args)),
  MAX: (args) => most(numbersIn(args)),
  COUNT: (args) =>
    args.flatMap((_, index) => rowsAt(args, index)).filter((value) => typeof value === "number")
      .length,
  SUMPRODUCT: sumOfProducts,
  SMALL: (args) => ranked(args, (a, b) => a - b),
  LARGE: (args) => ranked(args, (a, b) => b - a),
  AND: (args) => conditionsIn(args).every(Boolean),
  OR: (args) => conditionsIn(args).some(Boolean),
  NOT: (args) => !toBoolean(valueAt(args, 0)),
  ISNUMBER: (args) => isNumber(valueAt(args, 0)),
};

export { least, most, sum };
