import { type Argument, CellError } from "../../formula/value.js";
import { finite, type Plain, toBoolean } from "../operators.js";
import {
  allValues,
  countAt,
  ensure,
  isRange,
  listAt,
  type NativeFunction,
  valueAt,
} from "./arguments.js";

const isNumber = (value: Plain): value is number => typeof value === "number";

/** The numbers among the arguments; blanks, texts and booleans do not count, as in referenced cells. */
const numbersIn = (args: readonly Argument[]) => allValues(args).filter(isNumber);

function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return finite(total);
}

const least = (values: readonly number[]) =>
  values.length === 0 ? 0 : values.reduce((low, x) => Math.min(low, x));

const most = (values: readonly number[]) =>
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

/** The value at a place, from 1, among the numbers of a range put in order. */
function ranked(args: readonly Argument[], order: (a: number, b: number) => number): number {
  const values = numbersIn(args.slice(0, 1)).sort(order);
  const place = countAt(args, 1);
  ensure(place >= 1 && place <= values.length);
  return values[place - 1] as number;
}

/**
 * Is one of the conditions among the arguments `wanted`? Blanks and, in ranges, texts do not count.
 * All are looked at, since an error in any is an error of the whole.
 */
function someCondition(args: readonly Argument[], wanted: boolean): boolean {
  let counted = false;
  let found = false;
  for (const argument of args) {
    for (const value of isRange(argument) ? argument : [argument]) {
      if (value === null || (typeof value === "string" && isRange(argument))) continue;
      counted = true;
      if (toBoolean(value) === wanted) found = true;
    }
  }
  if (!counted) throw new CellError("#VALUE!");
  return found;
}

/** Functions over ranges. */
export const aggregates: Readonly<Record<string, NativeFunction>> = {
  SUM: (args) => sum(numbersIn(args)),
  MIN: (args) => least(numbersIn(args)),
  MAX: (args) => most(numbersIn(args)),
  SUMPRODUCT: sumOfProducts,
  SMALL: (args) => ranked(args, (a, b) => a - b),
  LARGE: (args) => ranked(args, (a, b) => b - a),
  AND: (args) => !someCondition(args, false),
  OR: (args) => someCondition(args, true),
  NOT: (args) => !toBoolean(valueAt(args, 0)),
  ISNUMBER: (args) => isNumber(valueAt(args, 0)),
};

export { least, most };
