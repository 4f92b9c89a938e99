import { type Plain, plainValue, toNumber, toText } from "../arithmetic/operators.js";
import { type Argument, CellError, type Value } from "../value.js";

export const isRange = (argument: Argument): argument is readonly Value[] =>
  Array.isArray(argument);

/** The argument at `index` as one value; a range of several throws #VALUE!. */
export function valueAt(args: readonly Argument[], index: number): Plain {
  const argument = args[index];
  if (argument === undefined) throw new CellError("#VALUE!");
  if (!isRange(argument)) return plainValue(argument);
  if (argument.length !== 1) throw new CellError("#VALUE!");
  return plainValue(argument[0] as Value);
}

export const numberAt = (args: readonly Argument[], index: number) =>
  toNumber(valueAt(args, index));

/** The argument at `index` without its decimals. */
export const countAt = (args: readonly Argument[], index: number) =>
  Math.trunc(numberAt(args, index));

export const textAt = (args: readonly Argument[], index: number) => toText(valueAt(args, index));

/** The argument at `index` as a list of values, errors among them; one value is a list of one. */
export function rowsAt(args: readonly Argument[], index: number): readonly Value[] {
  const argument = args[index];
  if (argument === undefined) throw new CellError("#VALUE!");
  return isRange(argument) ? argument : [plainValue(argument)];
}

/** The same, not to be changed, but an error among the values is thrown. */
export function listAt(args: readonly Argument[], index: number): readonly Plain[] {
  const values = rowsAt(args, index);
  for (const value of values) plainValue(value);
  return values as readonly Plain[];
}

/** All values of all arguments, in order. */
export function allValues(args: readonly Argument[]): readonly Plain[] {
  if (args.length === 1) return listAt(args, 0);
  const values: Plain[] = [];
  for (let i = 0; i < args.length; i++) for (const value of listAt(args, i)) values.push(value);
  return values;
}

/** Throws #NUM! unless `holds`. */
export function ensure(holds: boolean): void {
  if (!holds) throw new CellError("#NUM!");
}
