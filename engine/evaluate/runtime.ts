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
} from "../formula/arithmetic/operators.js";
import { natives } from "../formula/functions/index.js";
import type { Operator } from "../formula/tree.js";
import type { Value } from "../formula/value.js";

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

/** Operators by how formulas write them. */
export const operations: Readonly<Record<Operator, Operation>> = {
  ...{ "+": add, "-": subtract, "*": multiply, "/": quotient, "^": raised, "&": joined },
  ...{ "=": equal, "<>": unequal, "<": below, "<=": atMost, ">": above, ">=": atLeast },
};

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

/** An operator row by row, where a single value stands beside every row. */
export function eachRow(operation: Operation, left: Values, right: Values): Values {
  const rows: Value[] = [];
  const count = Math.max(left.length, right.length);
  for (let i = 0; i < count; i++) {
    const l = left.length === 1 ? left[0] : left[i];
    const r = right.length === 1 ? right[0] : right[i];
    rows.push(operation(l as Value, r as Value));
  }
  return rows;
}

/** A value among products: what is no number is zero. */
function counted(value: Value): number {
  if (typeof value === "number") return value;
  plainValue(value);
  return 0;
}

const negatedRows = (of: Values): Values => of.map((value) => -toNumber(value));

/** What the code made from formulas calls, by the names it calls it. */
export const runtime = {
  ...{ add, subtract, multiply, quotient, raised, joined },
  ...{ equal, unequal, below, atMost, above, atLeast },
  ...{ get, num, bool, finite, divide, power, column, negatedRows, eachRow, counted },
  ...Object.assign({}, ...[...natives.values()].map(({ code }) => code?.calls)),
};
