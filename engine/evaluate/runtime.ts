import { CellError, type Value } from "../formula/value.js";
import { type NativeFunction, natives } from "./natives/index.js";
import {
  compare,
  divide,
  finite,
  type Plain,
  plainValue,
  power,
  sameText,
  toBoolean,
  toNumber,
  toText,
} from "./operators.js";

type Values = readonly Value[];

/** A binary operator as code calls it: both sides are evaluated already, and are no errors. */
type Operation = (left: Value, right: Value) => Value;

const add: Operation = (l, r) => finite(toNumber(l) + toNumber(r));
const subtract: Operation = (l, r) => finite(toNumber(l) - toNumber(r));
const multiply: Operation = (l, r) => finite(toNumber(l) * toNumber(r));
const quotient: Operation = (l, r) => divide(toNumber(l), toNumber(r));
const raised: Operation = (l, r) => power(toNumber(l), toNumber(r));
const joined: Operation = (l, r) => toText(l) + toText(r);
const same = (l: Value, r: Value): boolean => {
  if (typeof l === "number" && typeof r === "number") return l === r;
  if (typeof l === "string" && typeof r === "string") return sameText(l, r);
  return compare(l, r) === 0;
};
const equal: Operation = same;
const unequal: Operation = (l, r) => !same(l, r);
const below: Operation = (l, r) => compare(l, r) < 0;
const atMost: Operation = (l, r) => compare(l, r) <= 0;
const above: Operation = (l, r) => compare(l, r) > 0;
const atLeast: Operation = (l, r) => compare(l, r) >= 0;

/** The value of a cell; an error is thrown. */
function get(value: Value): Plain {
  // of all values only errors and blanks are objects
  return typeof value === "object" ? plainValue(value) : value;
}

const num = toNumber;

function bool(value: Value): boolean {
  return typeof value === "boolean" ? value : toBoolean(value);
}

/** A column, copied: functions get it as a list. */
const column = (values: Values, from: number, rows: number): Values =>
  values.slice(from, from + rows);

const negatedRows = (of: Values): Values => of.map((value) => -toNumber(value));

/** One value out of a column, which need not be copied for that. */
function index(values: Values, from: number, length: number, place: Value): Plain {
  const row = Math.trunc(toNumber(place));
  if (row < 1) throw new CellError("#VALUE!");
  if (row > length) throw new CellError("#REF!");
  return get(values[from + row - 1] as Value);
}

/** The place of a value in a column; 0 where it has none. */
function place(values: Values, from: number, length: number, wanted: Plain): number {
  const sought = wanted ?? 0;
  const kind = typeof sought;
  for (let row = 0; row < length; row++) {
    const value = values[from + row] as Value;
    if (value === sought) return row + 1;
    // numbers and truth values are either identical or different
    if (kind === "string" && typeof value === "string" && sameText(value, sought as string)) {
      return row + 1;
    }
  }
  return 0;
}

function match(values: Values, from: number, length: number, wanted: Plain): number {
  const found = place(values, from, length, wanted);
  if (found === 0) throw new CellError("#N/A");
  return found;
}

const isError = (value: Value): boolean => value instanceof CellError;

function fails(expression: () => Value): boolean {
  try {
    const value = expression();
    if (typeof value === "number") finite(value);
    return false;
  } catch (error) {
    if (error instanceof CellError) return true;
    throw error;
  }
}

function holds(condition: () => boolean): boolean {
  try {
    return condition();
  } catch (error) {
    if (error instanceof CellError) return false;
    throw error;
  }
}

function choose(which: Value, choices: readonly (() => Value)[]): Value {
  const chosen = choices[Math.trunc(toNumber(which)) - 1];
  if (chosen === undefined) throw new CellError("#VALUE!");
  return chosen();
}

/** The sum of a column without a copy: what is no number does not count. */
function sum(values: Values, from: number, length: number): number {
  let total = 0;
  for (let i = from; i < from + length; i++) {
    const value = get(values[i] as Value);
    if (typeof value === "number") total += value;
  }
  return finite(total);
}

const max = natives.get("MAX") as NativeFunction;
const min = natives.get("MIN") as NativeFunction;

const larger: Operation = (l, r) =>
  typeof l === "number" && typeof r === "number" ? Math.max(l, r) : max([l, r]);
const smaller: Operation = (l, r) =>
  typeof l === "number" && typeof r === "number" ? Math.min(l, r) : min([l, r]);

/** What the code made from formulas calls, by the names it calls it. */
export const runtime = {
  ...{ add, subtract, multiply, quotient, raised, joined },
  ...{ equal, unequal, below, atMost, above, atLeast },
  ...{ get, num, bool, finite, column, negatedRows, index, place, match, sum },
  ...{ isError, fails, holds, choose, larger, smaller },
};
