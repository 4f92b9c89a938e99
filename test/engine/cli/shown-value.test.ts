import { expect, test } from "vitest";
import { shownValue } from "../../../engine/job/shown-value.js";
import { compile } from "../../../engine/template/compile.js";
import { fence } from "../../support/fence.js";
import { toy } from "../../support/toy.js";

test("a check is ok or fails; its label names the fault, so yes and no would mislead", () => {
  const model = compile(toy, "us");
  const check = model.cells.find(({ declaration }) => declaration.kind === "check");
  if (check === undefined) throw new Error("The toy has no check.");
  const shownAs = (right: boolean) =>
    shownValue(
      model,
      check,
      model.cells.map(() => right),
    );
  expect(shownAs(true)).toBe("ok");
  expect(shownAs(false)).toBe("fails");
});

test("a date that a formula does not find is blank, and no day of 1899", () => {
  const model = compile(fence, "us");
  const cell = model.byId.get("bid_date");
  if (cell === undefined) throw new Error("The fence has no date.");
  const shownAs = (value: number | null) =>
    shownValue(
      model,
      cell,
      model.cells.map(() => value),
    );
  expect([0, null, 46146].map(shownAs)).toEqual(["(blank)", "(blank)", "2026-05-04"]);
});

test("no zero has a sign, however small the number below it", () => {
  const model = compile(fence, "us");
  const cell = model.byId.get("worst_push");
  if (cell === undefined) throw new Error("The fence has no push.");
  const shownAs = (value: number) =>
    shownValue(
      model,
      cell,
      model.cells.map(() => value),
    );
  expect(shownAs(-1e-12)).toBe(shownAs(0));
  expect(shownAs(-1e-12)).not.toContain("-");
});
