import { DetailedCellError, HyperFormula } from "hyperformula";
import { expect, test } from "vitest";
import { judgeOptions, registerOverrides } from "../../../engine/evaluate/overrides.js";

/** The value of a formula in A1, beside numbers, a text, a blank and an error in column C. */
function calculated(formula: string): unknown {
  registerOverrides();
  const column = [1.4, 2.6, "'x", null, "=1/0"];
  const cells = column.map((value, i) => [i === 0 ? `=${formula}` : null, null, value]);
  const engine = HyperFormula.buildFromArray(cells, judgeOptions);
  const value = engine.getCellValue({ sheet: 0, row: 0, col: 0 });
  engine.destroy();
  return value instanceof DetailedCellError ? `${value.value} from ${value.address}` : value;
}

test.each([
  ["arithmetic on columns inside SUMPRODUCT", "SUMPRODUCT((C1:C2>2)*C1:C2)", 2.6],
  ["a scalar function of a column, row by row", "SUMPRODUCT(ROUND(C1:C2,0))", 4],
  ["an error among single arguments", "ROUND(C5,0)", "#DIV/0! from Sheet1!C5"],
  ["an error in a range", "SUMPRODUCT(C1:C5)", "#DIV/0! from Sheet1!C5"],
  ["an error in an argument that is calculated", "FIXED(1/0,2)", "#DIV/0! from Sheet1!A1"],
  ["an error of our own", "INDEX(C1:C2,3)", "#REF! from Sheet1!A1"],
  ["our error noticed", "ISERROR(MATCH(9,C1:C2,0))", true],
  ["a date is a plain number to the next function", "ROUND(DATE(2024,1,1),-1)", 45290],
  ["a blank picked by INDEX is blank", "ISNUMBER(INDEX(C1:C4,4))", false],
  ["too few arguments", "ROUND(1)", "#N/A from Sheet1!A1"],
  ["a choice", "CHOOSE(2.9,C5,7,C5)", 7],
  ["a choice in error", "CHOOSE(1,C5,7)", "#DIV/0! from Sheet1!C5"],
  ["no such choice (hyperformula: #NUM!)", "CHOOSE(3,1,2)", "#VALUE! from Sheet1!A1"],
  ["no such choice", "CHOOSE(0,1,2)", "#VALUE! from Sheet1!A1"],
  ["accents tell texts apart", '"e"="é"', false],
])("%s", (_, formula, expected) => {
  expect(calculated(formula)).toBe(expected);
});
