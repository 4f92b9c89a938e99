import fc from "fast-check";
import { expect, test } from "vitest";
import { compare, sameText } from "../../../../engine/formula/arithmetic/operators.js";

test.each([
  ["Stone-Lip", "stone-lip", true],
  ["stone-lip", "stone-lop", false],
  ["stone", "stones", false],
  ["e", "é", false],
  ["e\u0301", "é", true],
  ["É", "é", true],
  ["a-b", "a b", false],
  ["", "a", false],
  ["", "≠ office book", false],
  ["a", "A-1", false],
  ["", "\u00ad", true],
  ["a", "a\u0301", false],
])("%s and %s: %s", (left, right, same) => {
  expect(sameText(left, right)).toBe(same);
});

test("texts are the same where comparing them gives 0", () => {
  const text = fc.string({ unit: fc.constantFrom(..."aAbé\u0301-_ ß1ﬁ’'İi\u00ad\u0000≠") });
  fc.assert(
    fc.property(text, text, (left, right) => {
      expect(sameText(left, right)).toBe(compare(left, right) === 0);
    }),
    { numRuns: 5000, seed: 1 },
  );
});
