import { expect, test } from "vitest";
import { addCovered } from "../../../../engine/workbook/read/covered.js";

const covered = (areas: string): string[] => {
  const cells = new Set<string>();
  addCovered(cells, areas);
  return [...cells];
};

test.each([
  ["B4", ["B4"]],
  ["B4:C5 E1", ["B4", "C4", "B5", "C5", "E1"]],
  ["", []],
  ["nonsense B4:", []],
])("%s", (areas, cells) => {
  expect(covered(areas)).toEqual(cells);
});

test("a rule over the whole sheet takes neither the memory nor the time", () => {
  expect(covered("A1:XFD1048576")).toHaveLength(20000);
});
