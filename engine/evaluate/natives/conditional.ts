import { type Argument, CellError, type Value } from "../../formula/value.js";
import { plainValue } from "../operators.js";
import { least, most } from "./aggregates.js";
import { type NativeFunction, rowsAt, valueAt } from "./arguments.js";
import { criterion } from "./criterion.js";

/** For each row, whether it meets all pairs of range and criterion from argument `first` on; an error meets none. */
function meeting(args: readonly Argument[], first: number): boolean[] {
  const kept = rowsAt(args, first).map(() => true);
  for (let index = first; index < args.length; index += 2) {
    const values = rowsAt(args, index);
    if (values.length !== kept.length) throw new CellError("#VALUE!");
    const test = criterion(valueAt(args, index + 1));
    values.forEach((value, row) => {
      kept[row] = kept[row] === true && !(value instanceof CellError) && test(value);
    });
  }
  return kept;
}

/** The numbers of `values` in the rows that meet the criteria; throws an error that stands in one of them. */
function chosen(values: readonly Value[], kept: readonly boolean[]): number[] {
  if (values.length !== kept.length) throw new CellError("#VALUE!");
  return values
    .filter((_, row) => kept[row] === true)
    .map(plainValue)
    .filter((value) => typeof value === "number");
}

const count: NativeFunction = (args) => meeting(args, 0).filter(Boolean).length;

const over =
  (calculate: (values: readonly number[]) => number): NativeFunction =>
  (args) =>
    calculate(chosen(rowsAt(args, 0), meeting(args, 1)));

/** Functions over the rows that meet criteria; ranges of unequal length throw #VALUE!. */
export const conditional: Readonly<Record<string, NativeFunction>> = {
  COUNTIF: count,
  COUNTIFS: count,
  MAXIFS: over(most),
  MINIFS: over(least),
};
