import { CellError, type Value } from "../../formula/value.js";
import { compare, plainValue } from "../operators.js";
import { countAt, type NativeFunction, rowsAt, valueAt } from "./arguments.js";

/** The value at a place, from 1, of a column or row, errors elsewhere passed over; throws #REF! past its end. */
const index: NativeFunction = (args): Value => {
  const values = rowsAt(args, 0);
  const place = countAt(args, 1);
  if (place < 1) throw new CellError("#VALUE!");
  if (place > values.length) throw new CellError("#REF!");
  return plainValue(values[place - 1] as Value);
};

/**
 * The place, from 1, of the first value equal to the one wanted: same kind, texts without
 * regard to case and without wildcards, blank as 0; rows in error are passed over. Throws #N/A if there is none.
 */
const match: NativeFunction = (args) => {
  if (countAt(args, 2) !== 0) throw new CellError("#VALUE!");
  const wanted = valueAt(args, 0) ?? 0;
  const values = rowsAt(args, 1);
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as Value;
    // what is identical needs no collation
    if (value === wanted || (typeof value === typeof wanted && compare(value, wanted) === 0)) {
      return i + 1;
    }
  }
  throw new CellError("#N/A");
};

export const lookup: Readonly<Record<string, NativeFunction>> = { INDEX: index, MATCH: match };
