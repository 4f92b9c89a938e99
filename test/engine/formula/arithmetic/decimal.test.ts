import fc from "fast-check";
import { expect, test } from "vitest";
import {
  floorOf,
  rounded,
  roundedDown,
  roundedUp,
  shift,
  significant,
} from "../../../../engine/formula/arithmetic/decimal.js";

/** Rounding by decimal digits alone, which the plain arithmetic for easy cases must not differ from. */
function byDigits(whole: (size: number) => number, value: number, places: number): number {
  const size = shift(Math.abs(value), places);
  // of 15 digits none is left to round
  return size >= 1e15 ? value : Math.sign(value) * shift(whole(size), -places);
}

const half = (size: number) => Math.floor(size + 0.5);

const value = fc.oneof(
  fc.double({ min: -1e7, max: 1e7, noNaN: true }),
  // as people write them, and the same with the last binary digits off
  fc.integer({ min: -1e9, max: 1e9 }).map((n) => n / 1000),
  fc
    .tuple(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(1.1, 0.1, 1.005, 1 / 3))
    .map(([n, f]) => n * f),
  // close to where some place tips
  fc
    .tuple(
      fc.integer({ min: -1e6, max: 1e6 }),
      fc.integer({ min: 0, max: 10 }),
      fc.integer({ min: -30, max: 30 }),
    )
    .map(([n, places, off]) => ((n + 0.5) / 10 ** places) * (1 + off * 2 ** -52)),
  // tiny, as what is left of two sides that nearly agree
  fc.double({ min: -1e-3, max: 1e-3, noNaN: true }),
);

test.each([
  ["half", rounded, half],
  ["up", roundedUp, Math.ceil],
  ["down", roundedDown, Math.floor],
] as const)("rounding %s is that of the decimal digits", (_, round, whole) => {
  fc.assert(
    fc.property(value, fc.integer({ min: 0, max: 10 }), (x, places) => {
      expect(round(x, places) + 0).toBe(byDigits(whole, x, places) + 0);
    }),
    { numRuns: 50_000, seed: 1 },
  );
});

test("the whole number below is that of 15 digits", () => {
  fc.assert(
    fc.property(value, (x) => {
      expect(floorOf(x) + 0).toBe(Math.floor(significant(x)) + 0);
    }),
    { numRuns: 20_000, seed: 1 },
  );
});

test.each([
  [1.005, 2, 1.01],
  [-1.005, 2, -1.01],
  [2.5, 0, 3],
  [1234.5678, -2, 1200],
])("ROUND(%d, %i) = %d", (x, places, expected) => {
  expect(rounded(x, places)).toBe(expected);
});
