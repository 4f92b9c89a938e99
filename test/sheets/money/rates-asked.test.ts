import { expect, test } from "vitest";
import { changedDemo, failingIn } from "../../support/changed-demo.js";
import { without } from "../failing/case.js";

const sound = (code: string, changed = {}) =>
  !failingIn(changedDemo(changed, without("rates", code)())).has("used_rates.sound");

// none of the demo's tasks is a clarifier fitted
test("an office book without the rate of a task that no job asks for serves it", () => {
  expect(sound("clarifier-fitted")).toBe(true);
});

test("and not a job that asks for it", () => {
  expect(sound("clarifier-fitted", { clarifier_included: true })).toBe(false);
});
