import { expect, test } from "vitest";
import { columnLetters } from "../../engine/address.js";

test.each([
  [1, "A"],
  [26, "Z"],
  [27, "AA"],
  [702, "ZZ"],
  [703, "AAA"],
  [16_384, "XFD"],
])("column %d is %s", (column, letters) => {
  expect(columnLetters(column)).toBe(letters);
});

test.each([0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY])("%d is no column", (column) => {
  expect(() => columnLetters(column)).toThrow("is no column");
});
