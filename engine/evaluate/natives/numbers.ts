import { CellError } from "../../formula/value.js";
import { floorOf } from "../decimal.js";
import { finite } from "../operators.js";
import { type NativeFunction, numberAt } from "./arguments.js";

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

/** Functions of plain numbers; angles in radians. Each throws #NUM! outside its range. */
export const numbers: Readonly<Record<string, NativeFunction>> = {
  ABS: ofOne(Math.abs),
  SQRT: ofOne(Math.sqrt),
  EXP: ofOne(Math.exp),
  LN: ofOne(Math.log),
  LOG10: ofOne(Math.log10),
  SIN: ofOne(Math.sin),
  COS: ofOne(Math.cos),
  TAN: ofOne(Math.tan),
  ATAN: ofOne(Math.atan),
  RADIANS: ofOne((degrees) => degrees * (Math.PI / 180)),
  DEGREES: ofOne((radians) => radians * (180 / Math.PI)),
  SIGN: ofOne(Math.sign),
  PI: () => Math.PI,
  MOD: (args) => remainder(numberAt(args, 0), numberAt(args, 1)),
};
