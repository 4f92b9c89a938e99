import { expect, test } from "vitest";
import type { Finding } from "../../../engine/audit/finding.js";
import { rewrittenAsOne } from "../../../engine/audit/look/rules.js";

const finding = (code: Finding["code"], where: string): Finding => ({
  grade: "doubtful",
  code,
  where,
  found: "found",
  expected: "expected",
  advice: "advice",
});
const rewritten = ["A!A1", "A!B1", "B!A1", "C!A1"].map((where) => finding("rule-rewritten", where));

test("rules that a library wrote anew are one finding of a workbook, and no other is in it", () => {
  const added = finding("look", "A!C1");
  const [first, all, ...none] = rewrittenAsOne([
    rewritten[0] as Finding,
    added,
    ...rewritten.slice(1),
  ]);
  expect(first).toBe(added);
  expect(all).toMatchObject({
    code: "rule-rewritten",
    grade: "doubtful",
    where: "4 rules, the first at A!A1",
    names: ["A!A1", "A!B1", "B!A1", "C!A1"],
  });
  expect(none).toEqual([]);
});

test("a few are told by themselves", () => {
  expect(rewrittenAsOne(rewritten.slice(1))).toEqual(rewritten.slice(1));
});
