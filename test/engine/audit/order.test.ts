import { expect, test } from "vitest";
import type { Finding } from "../../../engine/audit/finding.js";
import { inOrder, sectionsOfFindings } from "../../../engine/audit/order.js";

const finding = (grade: Finding["grade"], code: Finding["code"], where: string): Finding => ({
  ...{ grade, code, where },
  found: "found",
  expected: "expected",
  advice: "advice",
});

const mixed = [
  finding("to know", "note", "A1"),
  finding("doubtful", "look", "B1"),
  finding("doubtful", "input-untold", "C1"),
  finding("wrong", "price-changed", "D1"),
  finding("to know", "input-untold", "E1"),
  finding("wrong", "formula-edited", "F1"),
];

test("the gravest stand first, and changed inputs before what else is doubtful", () => {
  expect(inOrder(mixed).map(({ where }) => where)).toEqual(["D1", "F1", "C1", "B1", "A1", "E1"]);
});

test("each heading stands once, over its own, and none over nothing", () => {
  const told = sectionsOfFindings(mixed).map(({ title, findings }) => [
    title.replace(/:.*/, ""),
    findings.length,
  ]);
  expect(told).toEqual([
    ["Wrong", 2],
    ["Changed inputs", 1],
    ["Doubtful", 1],
    ["To know", 2],
  ]);
  expect(sectionsOfFindings(mixed.slice(3, 4))).toHaveLength(1);
});
