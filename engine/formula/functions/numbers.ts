import { raiseDimension } from "../../units/dimension.js";
import { floorOf } from "../arithmetic/decimal.js";
import { finite, toNumber } from "../arithmetic/operators.js";
import { describeType, plain, type Type } from "../type.js";
import { CellError, type Value } from "../value.js";
import { numberAt, valueAt } from "./arguments.js";
import {
  type Check,
  type Code,
  direct,
  type NativeFunction,
  native,
  type Typed,
} from "./description.js";
import { alike, numberInAnyUnit, plainOnly, takes } from "./rules.js";

const ofOne =
  (calculate: (x: number) => number): NativeFunction =>
  (args) =>
    finite(calculate(numberAt(args, 0)));

/** Two numbers closer than this part of their size are the same, but for binary error. */
const noise = 4e-15;

/**
 * The remainder, with the divisor's sign: x - y * INT(x / y) (ISO/IEC 29500-1 §18.17.7, from memory).
 * Nothing but binary error is left over when y goes into x: MOD(1, 0.1) is 0.
 */
function remainder(x: number, y: number): number {
  if (y === 0) throw new CellError("#DIV/0!");
  const rest = x - y * floorOf(x / y);
  return Math.abs(rest) < noise * Math.abs(x) ? 0 : finite(rest);
}

const remainderOf = (x: Value, y: Value) => remainder(toNumber(x), toNumber(y));

const root: Check = (args, rules) => {
  const { type, tree } = args[0] as Typed;
  if (type.kind === "zero") return { args: [tree], type };
  if (type.kind !== "number") return rules.fail(`it takes a number, not ${describeType(type)}`);
  const dimension = raiseDimension(type.dimension, 0.5);
  return { args: [tree], type: { ...type, dimension, size: Math.sqrt(type.size) } };
};

const angle: Type = { kind: "number", dimension: { angle: 1 }, size: 1, range: false };

/** A function that JavaScript has too. */
const written = (name: string): Code => ({
  write: ([of], { number }) => `finite(Math.${name}(${number(of)}))`,
});

const plainNumber = (name: string, calculate: (x: number) => number, code?: Code) =>
  native(name, [1], {
    check: plainOnly,
    run: ofOne(calculate),
    ...(code === undefined ? {} : { code }),
  });

/** Functions of plain numbers; angles in radians. Each throws #NUM! outside its range. */
export const numbers = [
  native("ABS", [1], {
    check: alike,
    run: ofOne(Math.abs),
    code: { write: ([of], { number }) => `Math.abs(${number(of)})` },
  }),
  native("SQRT", [1], { check: root, run: ofOne(Math.sqrt), code: written("sqrt") }),
  native("SIGN", [1], { check: numberInAnyUnit(plain), run: ofOne(Math.sign) }),
  native("MOD", [2], {
    check: alike,
    run: (args) => remainderOf(valueAt(args, 0), valueAt(args, 1)),
    code: direct("remainderOf", remainderOf as (...values: Value[]) => Value),
    judge: { takes: ["value", "value"], since: "MOD(1, 0.1) = 0.1" },
  }),
  plainNumber("EXP", Math.exp, written("exp")),
  plainNumber("LN", Math.log, written("log")),
  plainNumber("LOG10", Math.log10),
  plainNumber("SIN", Math.sin),
  plainNumber("COS", Math.cos),
  plainNumber("TAN", Math.tan),
  plainNumber("ATAN", Math.atan),
  native("RADIANS", [1], {
    check: takes([angle], plain),
    run: ofOne((degrees) => degrees * (Math.PI / 180)),
  }),
  native("DEGREES", [1], {
    check: takes([plain], angle),
    run: ofOne((radians) => radians * (180 / Math.PI)),
  }),
  native("PI", [0], {
    check: plainOnly,
    run: () => Math.PI,
    judge: { takes: [], since: "3.14159265358979" },
  }),
];
