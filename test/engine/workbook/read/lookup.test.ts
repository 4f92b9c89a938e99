import { expect, test } from "vitest";
import { cellAt, columnAt } from "../../../../engine/workbook/read/lookup.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { rows, workbook } from "./build.js";

const bytes = workbook({
  sheets: {
    Falls: rows("<c><v>1</v></c><c><v>2</v></c>", "", "<c><f>A1+2</f><v>3</v></c>"),
    Other: rows(),
  },
  names: `<definedName name="Flow">Falls!$A$1</definedName><definedName name="width">Falls!$A$1:$A$3</definedName>
    <definedName name="across">Falls!$A$1:$B$1</definedName><definedName name="block">Falls!$A$1:$B$3</definedName>
    <definedName name="tall">Falls!$A$1:$A$30001</definedName><definedName name="rate">0.5</definedName>
    <definedName name="local" localSheetId="0">Falls!$A$1</definedName><definedName name="other">Other!$C$3</definedName>`,
});
const content = readWorkbook(bytes);

test("a cell by its name, in any case", () => {
  expect(cellAt(content, "flow")).toEqual({ sheet: "Falls", address: "A1", cell: { value: 1 } });
  expect(cellAt(content, "other").cell.value).toBeNull();
});

test("a column and a row by name", () => {
  expect(columnAt(content, "width").map(({ cell }) => cell.value)).toEqual([1, null, 3]);
  expect(columnAt(content, "across").map(({ address }) => address)).toEqual(["A1", "B1"]);
  expect(columnAt(content, "flow")).toHaveLength(1);
});

test.each([
  ["missing", "is missing"],
  ["local", "is missing"],
  ["rate", 'is defined as "0.5"'],
  ["width", "Falls!A1:A3, but one cell is wanted"],
])("%s is no single cell", (name, sentence) => {
  expect(() => cellAt(content, name)).toThrow(sentence);
});

test.each([
  ["block", "one column or one row"],
  ["tall", "30001 cells"],
])("%s is no column", (name, sentence) => {
  expect(() => columnAt(content, name)).toThrow(sentence);
});

test("a sheet that was left out is a mistake of the caller, not of the file", () => {
  const part = readWorkbook(bytes, { sheets: ({ name }) => name === "Falls" });
  expect(() => cellAt(part, "other")).toThrow(RangeError);
});
