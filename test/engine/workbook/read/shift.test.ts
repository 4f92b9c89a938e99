import { expect, test } from "vitest";
import { cutFormula, shiftFormula } from "../../../../engine/workbook/read/shift.js";

test.each([
  // formula, the same one row down and two columns right
  ["A1+$A1+A$1+$A$1", "C2+$A2+C$1+$A$1"],
  ["SUM(A1:B9)*Z10", "SUM(C2:D10)*AB11"],
  ["LOG10(A1)+ATAN2(B1,C1)", "LOG10(C2)+ATAN2(D2,E2)"],
  ['"A1 ""B2"" "&A1', '"A1 ""B2"" "&C2'],
  ["'A1 it''s B2'!A1+Sheet1!B2", "'A1 it''s B2'!C2+Sheet1!D3"],
  ["[1]Sheet1!A1", "[1]Sheet1!C2"],
  ["Q1!A1", "Q1!C2"],
  ["Table1[[#This Row],[A1]]+A1", "Table1[[#This Row],[A1]]+C2"],
  ["SUM(A:C)+SUM($A:C)+SUM(1:3)+SUM(2:$3)", "SUM(C:E)+SUM($A:E)+SUM(2:4)+SUM(3:$3)"],
  ["falls.flow+A1.b+_A1+lift", "falls.flow+A1.b+_A1+lift"],
  ["1E5+1E+5+A1", "1E5+1E+5+C2"],
  ["XFD1", "#REF!"],
  ["A1048576", "#REF!"],
  ["XFE1+A1048577", "XFE1+A1048577"],
  ["_xlfn.IFS(A1>0,#REF!,TRUE,#N/A)", "_xlfn.IFS(C2>0,#REF!,TRUE,#N/A)"],
  ["a1", "C2"],
  ['"open A1', '"open A1'],
])("%s", (formula, moved) => {
  expect(shiftFormula(cutFormula(formula), 1, 2)).toBe(moved);
  // Without a move only letter case may change.
  expect(shiftFormula(cutFormula(formula), 0, 0).toLowerCase()).toBe(formula.toLowerCase());
});

test("up and left, off the sheet", () => {
  expect(shiftFormula(cutFormula("C3+A1+A$1"), -1, -1)).toBe("B2+#REF!+#REF!");
});

test.each(["[", "'", '"', "A1:", "a:", "((((", "[['"])(
  // a pass for each character would take minutes, and end at the time limit of every test
  "one pass over 400,000 characters of %s",
  (piece) => {
    const formula = piece.repeat(400_000 / piece.length);
    const shifted = shiftFormula(cutFormula(formula), 0, 0);
    expect(shifted.toLowerCase() === formula.toLowerCase()).toBe(true);
  },
);
