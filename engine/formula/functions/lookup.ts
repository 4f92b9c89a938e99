import { compare, type Plain, plainValue, sameText, toNumber } from "../arithmetic/operators.js";
import { plain } from "../type.js";
import { CellError, type Value } from "../value.js";
import { countAt, rowsAt, valueAt } from "./arguments.js";
import { type Check, type NativeFunction, native, type Typed } from "./description.js";
import { alone, firstOnly } from "./rules.js";
import { rowsOfText } from "./text-rows.js";

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

const matching: Check = (args, rules) => {
  const [wanted, column, exact] = args as [Typed, Typed, Typed];
  if (!column.type.range) rules.fail("it looks through a whole column");
  if (exact.tree.kind !== "number" || exact.tree.value !== 0) {
    rules.fail(
      "its third argument must be 0 (exact): other kinds of match differ between programs",
    );
  }
  return {
    args: [rules.fit(wanted, column.type, "what it looks for"), column.tree, exact.tree],
    type: plain,
  };
};

const picking: Check = (args, rules) => {
  const [column, at] = args as [Typed, Typed];
  if (!column.type.range) rules.fail("it picks from a whole column");
  return { args: [column.tree, rules.fit(at, plain, "the position")], type: alone(column.type) };
};

/** One value out of a column, which need not be copied for that. */
function columnIndex(values: readonly Value[], from: number, length: number, place: Value): Plain {
  const row = Math.trunc(toNumber(place));
  if (row < 1) throw new CellError("#VALUE!");
  if (row > length) throw new CellError("#REF!");
  return plainValue(values[from + row - 1] as Value);
}

/** The place of a value in a column, likewise. */
function columnMatch(
  values: readonly Value[],
  from: number,
  length: number,
  wanted: Plain,
): number {
  const sought = wanted ?? 0;
  const found = rowsOfText(values, from, length, sought);
  if (found !== undefined) {
    const [row] = found.rows;
    if (row !== undefined) return row + 1;
    throw new CellError("#N/A");
  }
  const kind = typeof sought;
  for (let row = 0; row < length; row++) {
    const value = values[from + row] as Value;
    if (value === sought) return row + 1;
    // numbers and truth values are either identical or different
    if (kind === "string" && typeof value === "string" && sameText(value, sought as string)) {
      return row + 1;
    }
  }
  throw new CellError("#N/A");
}

/** Looking for a row, and picking from one. */
export const lookup = [
  native("INDEX", [2], {
    check: picking,
    columns: firstOnly,
    run: index,
    code: {
      write: ([of, at], { column, value }) => {
        const place = column(of);
        return place === undefined ? undefined : `columnIndex(${place},${value(at)})`;
      },
      calls: { columnIndex },
    },
    judge: { takes: ["range", "value"], since: "a row of cells = #NUM!" },
  }),
  native("MATCH", [3], {
    check: matching,
    columns: (place) => place === 1,
    run: match,
    code: {
      write: ([wanted, of, how], { column, value }) => {
        const place = column(of);
        const exact = how?.kind === "number" && how.value === 0;
        return place === undefined || !exact ? undefined : `columnMatch(${place},${value(wanted)})`;
      },
      calls: { columnMatch },
    },
    judge: { takes: ["value", "range", "value"], since: 'MATCH("é", {"e"}, 0) = 1' },
  }),
];
