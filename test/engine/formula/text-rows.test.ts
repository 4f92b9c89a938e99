import fc from "fast-check";
import { expect, test } from "vitest";
import { compare, plainValue } from "../../../engine/formula/arithmetic/operators.js";
import { natives } from "../../../engine/formula/functions/index.js";
import { plainText } from "../../../engine/formula/functions/text-rows.js";
import { type Argument, CellError, type Value } from "../../../engine/formula/value.js";

const printed = Array.from({ length: 127 - 32 }, (_, i) => String.fromCharCode(32 + i));

test("two printed letters of ASCII are the same where they are but for case, within a text too", () => {
  for (const one of printed) {
    for (const other of printed) {
      const same = one.toLowerCase() === other.toLowerCase();
      expect([one, other, compare(one, other) === 0]).toEqual([one, other, same]);
      expect(compare(`a${one}b`, `A${other}b`) === 0).toBe(same);
    }
  }
  expect(printed.map(plainText)).toEqual(printed.map((letter) => letter.toLowerCase()));
  expect(["é", "a\u0301", "a\tb", "\u007f", "İ"].map(plainText)).toEqual(Array(5).fill(undefined));
});

/** Code that formulas call, by its name. */
const code = Object.assign({}, ...[...natives.values()].map((one) => one.code?.calls)) as Record<
  string,
  (...args: unknown[]) => Value
>;

/** A value, or the very error that is thrown. */
function told(run: () => Value): Value {
  try {
    return run();
  } catch (error) {
    if (error instanceof CellError) return error;
    throw error;
  }
}

const errors = [new CellError("#N/A", "a"), new CellError("#DIV/0!", "b")];
const value = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom<Value>("a", "A", "b", "a b", "", "é", "É", "e\u0301") },
  { weight: 2, arbitrary: fc.constantFrom<Value>(null, 0, 1, 2.5, true, false) },
  { weight: 1, arbitrary: fc.constantFrom<Value>(...errors) },
);
const plain = value.filter((one) => !(one instanceof CellError));
const rows = 20;

test("rows that are found are those that looking through them finds, also after a change", () => {
  const column = fc.array(value, { minLength: rows, maxLength: rows });
  const figures = fc.array(fc.oneof(fc.double({ noNaN: true, min: 0, max: 9 }), value), {
    minLength: rows,
    maxLength: rows,
  });
  fc.assert(
    fc.property(
      fc.oneof(column, fc.array(plain, { minLength: rows, maxLength: rows })),
      figures,
      fc.array(plain, { minLength: 1, maxLength: 3 }),
      fc.tuple(fc.nat(rows - 1), value),
      (keys, sums, wanted, [at, changed]) => {
        const values = ["before", ...keys, ...sums];
        for (const sought of [...wanted, ...wanted]) {
          const held = values.slice(1, 1 + rows) as Value[];
          const isSought = held.map((one) => () => compare(one, sought) === 0);
          expect(told(() => code.countAlike?.(values, 1, rows, sought) as Value)).toBe(
            told(() => isSought.filter((one) => one()).length),
          );
          expect(told(() => code.sumAlike?.(values, 1, rows, sought, 1 + rows) as Value)).toBe(
            told(() => {
              let total = 0;
              isSought.forEach((one, row) => {
                const value = values[1 + rows + row];
                if (one() && typeof value === "number") total += value;
              });
              for (const one of values.slice(1 + rows)) plainValue(one as Value);
              return total;
            }),
          );
          const match = natives.get("MATCH")?.run as (args: Argument[]) => Value;
          const found = told(() => code.columnMatch?.(values, 1, rows, sought) as Value);
          expect(found).toEqual(told(() => match([sought, held, 0])));
          values[1 + at] = changed;
        }
      },
    ),
    { numRuns: 600, seed: 1 },
  );
});

test("numbers in order follow their column", () => {
  const values: Value[] = ["before", 3, null, 1, "x", 2];
  const nth = (place: number) => told(() => code.fromLeast?.(values, 1, 5, place) as Value);
  expect([nth(1), nth(2), nth(3), nth(4)]).toEqual([1, 2, 3, new CellError("#NUM!")]);
  values[3] = 9;
  expect([nth(1), nth(3)]).toEqual([2, 9]);
  values[2] = errors[0] as CellError;
  expect(nth(1)).toBe(errors[0]);
});
