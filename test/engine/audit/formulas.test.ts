import { expect, test } from "vitest";
import { expectedFormula, expectedFormulas } from "../../../engine/audit/formulas.js";
import { isSpelledAlike, normalForm } from "../../../engine/audit/normal-form.js";
import { matchWorkbook } from "../../../engine/workbook/match/match.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { fenceModel, fenceWorkbook } from "../../support/fence-bid.js";

test("where nothing moved, each formula is expected as it is written", async () => {
  const match = matchWorkbook(readWorkbook(await fenceWorkbook()), fenceModel);
  const quick = expectedFormulas(fenceModel, match);
  const form = (formula: string, sheet: string) => normalForm(formula, sheet, () => undefined);
  for (const cell of fenceModel.order) {
    const slow = expectedFormula(fenceModel, match, cell);
    // an area of the sheet's own is written with the sheet's name
    expect([cell.id, form(quick(cell), cell.sheet)]).toEqual([cell.id, form(slow, cell.sheet)]);
  }
});

test("a sheet that has another name is followed", async () => {
  const match = matchWorkbook(readWorkbook(await fenceWorkbook()), fenceModel);
  const [first, ...others] = [...match.sheets] as [[string, string], ...[string, string][]];
  const renamed = { ...match, sheets: new Map([[first[0], "Elsewhere"], ...others]) };
  const cells = fenceModel.order.map((cell) => expectedFormulas(fenceModel, renamed)(cell));
  expect(cells).toEqual(fenceModel.order.map((cell) => expectedFormula(fenceModel, renamed, cell)));
});

test.each([
  ['"ab"&x&"cd"', '("a"&"b")&x&("c"&"d")', true],
  ['"abc"', '("a"&("b"&"c"))', true],
  ['x&""', "x", false],
  ['"a"&x&"b"', '"ab"&x', false],
  ['"a"&"b"&x', '"ab"&x&""', false],
  ['"a b"', '"a"&"b"', false],
])("the normal forms of %s and %s are the same: %s", (one, other, same) => {
  const form = (formula: string) => normalForm(formula, "Site", () => undefined);
  expect(form(one) === form(other)).toBe(same);
  expect(form(one)).toBeDefined();
});

test.each([
  ["Sizes!B2+1", "'Sizes'!B2+1", true],
  ["A1", "A1", true],
  ["'Two words'!B2", "Two words!B2", false],
  [`"'Sizes'!"&A1&Sizes!B2`, `"Sizes!"&A1&Sizes!B2`, false],
  [`'a"b'!A1&"'X'!"`, `'a"b'!A1&"X!"`, false],
  ["Sizes!B2", "Sizes!B3", false],
  ["total_cost", "total _cost", false],
])("%s and %s are spelled alike: %s", (one, other, alike) => {
  expect(isSpelledAlike(one, other)).toBe(alike);
});
