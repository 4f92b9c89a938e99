import { expect, test } from "vitest";
import { placeholdersUsed } from "../../../engine/book/placeholders-used.js";
import { starterBook } from "../../../engine/book/starter.js";
import { waterfall } from "../../../sheets/templates/waterfall.js";
import { changedDemo, model, shown } from "../../support/changed-demo.js";

/** The rows that a job uses are those that its own check counts, by another way: clearing each mark. */

const starter = starterBook(waterfall, "us");
const under = (changed: Record<string, unknown>) =>
  changedDemo({ pump_choice: null, machine_choice: null, ...changed }, { prices: starter });

test.each([
  ["as it is", {}],
  ["worked by hand", { method_choice: "by hand" }],
])("as many as the bid counts: %s", (_, changed) => {
  const values = under(changed);
  const used = placeholdersUsed(model, values);
  expect(used.length).toBeGreaterThan(30);
  expect(used.length).toBe(shown(values, "placeholders_used"));
});

test("what is bought, and not what is only copied; the machine, and not where work is by hand", () => {
  const codes = (changed: Record<string, unknown>) =>
    placeholdersUsed(model, under(changed)).map(({ from, code }) => `${from} ${code}`);
  expect(codes({})).toEqual(expect.arrayContaining(["items crate", "machines machine"]));
  expect(codes({ method_choice: "by hand" })).not.toContain("machines machine");
});

test("none under a book of the office's own", () => {
  expect(placeholdersUsed(model, changedDemo({}))).toEqual([]);
});
