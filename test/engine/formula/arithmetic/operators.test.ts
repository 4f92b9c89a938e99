import { describe, expect, test } from "vitest";
import {
  compare,
  divide,
  finite,
  power,
  toBoolean,
  toNumber,
  toText,
} from "../../../../engine/formula/arithmetic/operators.js";
import { CellError, type Value } from "../../../../engine/formula/value.js";

/** The code of the error thrown, or the value. */
function outcome(calculate: () => Value): Value {
  try {
    return calculate();
  } catch (error) {
    if (error instanceof CellError) return error.code;
    throw error;
  }
}

test.each<[Value, Value]>([
  [null, 0],
  [true, 1],
  ["2.5", 2.5],
  [" -1e3 ", -1000],
  ["", "#VALUE!"],
  ["5%", "#VALUE!"],
  ["0x10", "#VALUE!"],
  ["1e999", "#NUM!"],
  [new CellError("#N/A"), "#N/A"],
])("%j as a number", (value, expected) => {
  expect(outcome(() => toNumber(value))).toBe(expected);
});

test.each<[Value, string]>([
  [null, ""],
  [false, "FALSE"],
  [0.1 + 0.2, "0.3"],
  [1 / 3, "0.333333333333333"],
  [-1234.5, "-1234.5"],
  [0.00001, "0.00001"],
  [1e20, "100000000000000000000"],
  [123456789012345680, "123456789012346000"],
  [1e21, "1E+21"],
  [2.5e-10, "2.5E-10"],
  [0, "0"],
])("%j as text", (value, expected) => {
  expect(toText(value)).toBe(expected);
});

test.each<[Value, Value]>([
  [null, false],
  [0, false],
  [-0.5, true],
  ["true", true],
  ["FALSE", false],
  ["", "#VALUE!"],
  ["yes", "#VALUE!"],
])("%j as a condition", (value, expected) => {
  expect(outcome(() => toBoolean(value))).toBe(expected);
});

test.each<[Value, Value, number]>([
  [1, 2, -1],
  [2, 2, 0],
  [99, "a", -1],
  ["z", false, -1],
  [true, false, 1],
  ["Basin", "bASIN", 0],
  ["a", "B", -1],
  ["e", "é", -1],
  [null, 0, 0],
  [null, "", 0],
  [null, false, 0],
  [null, null, 0],
  [null, -1, 1],
  ["a", null, 1],
])("%j beside %j", (a, b, expected) => {
  expect(Math.sign(compare(a, b))).toBe(expected);
  expect(Math.sign(compare(b, a)) + expected).toBe(0);
});

describe("arithmetic", () => {
  test.each<[string, () => Value, Value]>([
    ["2^0.5", () => power(2, 0.5), Math.SQRT2],
    ["0^0", () => power(0, 0), 1],
    ["0^-1", () => power(0, -1), "#NUM!"],
    ["(-8)^(1/3)", () => power(-8, 1 / 3), "#NUM!"],
    ["1/4", () => divide(1, 4), 0.25],
    ["1/0", () => divide(1, 0), "#DIV/0!"],
    ["0/0", () => divide(0, 0), "#DIV/0!"],
    ["1e300/1e-300", () => divide(1e300, 1e-300), "#NUM!"],
    ["not a number", () => finite(Number.NaN), "#NUM!"],
    ["negative zero", () => finite(-0), 0],
  ])("%s", (_, calculate, expected) => {
    expect(outcome(calculate)).toBe(expected);
  });
});
