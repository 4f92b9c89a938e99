import { CellError } from "../../formula/value.js";
import { floorOf, rounded, roundedBy, significant } from "../decimal.js";
import { finite } from "../operators.js";
import { ensure, type NativeFunction, numberAt } from "./arguments.js";

const atDecimals =
  (calculate: (x: number, places: number) => number): NativeFunction =>
  (args) =>
    finite(calculate(numberAt(args, 0), numberAt(args, 1)));

/** A multiple of `step`: `whole` rounds how many steps there are. */
function multiple(whole: (steps: number) => number, x: number, step: number): number {
  ensure(!(x > 0 && step < 0));
  return finite(significant(whole(significant(x / step)) * step));
}

/**
 * Rounding. The argument is first taken to 15 significant digits, so that binary error
 * moves no figure (100*1.1 rounds up to 110); halves go away from zero.
 */
export const rounding: Readonly<Record<string, NativeFunction>> = {
  INT: (args) => finite(floorOf(numberAt(args, 0))),
  ROUND: atDecimals(rounded),
  ROUNDUP: atDecimals((x, places) => roundedBy(Math.ceil, x, places)),
  ROUNDDOWN: atDecimals((x, places) => roundedBy(Math.floor, x, places)),
  CEILING: (args) => {
    const [x, step] = [numberAt(args, 0), numberAt(args, 1)];
    return x === 0 || step === 0 ? 0 : multiple(Math.ceil, x, step);
  },
  FLOOR: (args) => {
    const [x, step] = [numberAt(args, 0), numberAt(args, 1)];
    if (x === 0) return 0;
    if (step === 0) throw new CellError("#DIV/0!");
    return multiple(Math.floor, x, step);
  },
};
