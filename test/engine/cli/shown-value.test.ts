import { expect, test } from "vitest";
import { shownValue } from "../../../engine/job/shown-value.js";
import { compile } from "../../../engine/template/compile.js";
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
