import { expect, test } from "vitest";
import { addressOf, positionOf } from "../../../../engine/workbook/read/address.js";

test.each([
  ["A1", 1, 1],
  ["Z9", 9, 26],
  ["AA10", 10, 27],
  ["zz2", 2, 702],
  ["AAA1", 1, 703],
  ["XFD1048576", 1048576, 16384],
])("%s", (address, row, column) => {
  expect(positionOf(address)).toEqual({ row, column });
  expect(addressOf({ row, column })).toBe(address.toUpperCase());
});

test.each([
  "",
  "A",
  "1",
  "A0",
  "A01",
  "A-1",
  "$A$1",
  "XFE1",
  "ZZZZ9",
  "A1048577",
  "A1 ",
  " A1",
  "A1:B2",
  "Ａ1",
  "A1.5",
  "[1",
  "A99999999999",
])("%j is no address", (address) => {
  expect(positionOf(address)).toBeUndefined();
});
