import { floorOf, rounded, roundedDown, roundedUp, significant } from "../arithmetic/decimal.js";
import { finite, toNumber } from "../arithmetic/operators.js";
import { CellError, type Value } from "../value.js";
import { ensure, numberAt, valueAt } from "./arguments.js";
import { type Check, direct, type NativeFunction, native } from "./description.js";
import { alike, firstKeeps } from "./rules.js";

/** A function of a number and of decimals, for a list of arguments and for the two by themselves. */
const atDecimals = (name: string, calculate: (x: number, places: number) => number) => {
  const call = (x: Value, places: Value) => finite(calculate(toNumber(x), toNumber(places)));
  const run: NativeFunction = (args) => call(valueAt(args, 0), valueAt(args, 1));
  return { run, code: direct(name, call as (...values: Value[]) => Value) };
};

const wholeBelow = (x: Value = null) => finite(floorOf(toNumber(x)));

/** A multiple of `step`: `whole` rounds how many steps there are. */
function multiple(whole: (steps: number) => number, x: number, step: number): number {
  ensure(!(x > 0 && step < 0));
  return finite(significant(whole(significant(x / step)) * step));
}

const ceiling: NativeFunction = (args) => {
  const [x, step] = [numberAt(args, 0), numberAt(args, 1)];
  return x === 0 || step === 0 ? 0 : multiple(Math.ceil, x, step);
};

const floor: NativeFunction = (args) => {
  const [x, step] = [numberAt(args, 0), numberAt(args, 1)];
  if (x === 0) return 0;
  if (step === 0) throw new CellError("#DIV/0!");
  return multiple(Math.floor, x, step);
};

/** Rounding up must be guarded, or 110.00000000000001 becomes 111. */
const guarded =
  (then: Check): Check =>
  (args, rules) => {
    const first = args[0]?.tree;
    if (first?.kind !== "call" || first.name !== "ROUND") {
      rules.fail("it rounds up without a guard: write the first argument as ROUND(..., 6)");
    }
    return then(args, rules);
  };

const instead = (since: string) => ({ takes: ["value", "value"], since }) as const;

/**
 * Rounding. The argument is first taken to 15 significant digits, so that binary error
 * moves no figure (100*1.1 rounds up to 110); halves go away from zero.
 */
export const rounding = [
  native("INT", [1], {
    check: alike,
    run: (args) => wholeBelow(valueAt(args, 0)),
    code: direct("wholeBelow", wholeBelow),
    judge: { takes: ["value"], since: "INT(-8.5) = -8" },
  }),
  native("ROUND", [2], {
    check: firstKeeps,
    ...atDecimals("nearest", rounded),
    judge: instead("ROUND(1.005, 2) = 1"),
  }),
  native("ROUNDUP", [2], {
    check: guarded(firstKeeps),
    ...atDecimals("roundedUp", roundedUp),
    judge: instead("ROUNDUP(100*1.1, 0) = 111"),
  }),
  native("ROUNDDOWN", [2], {
    check: firstKeeps,
    ...atDecimals("roundedDown", roundedDown),
    judge: instead("ROUNDDOWN(4.35*100, 0) = 434"),
  }),
  native("CEILING", [2], {
    check: guarded(alike),
    run: ceiling,
    judge: instead("CEILING(100*1.1, 1) = 111"),
  }),
  native("FLOOR", [2], { check: alike, run: floor, judge: instead("FLOOR(7.1, 0.1) = 7") }),
];
