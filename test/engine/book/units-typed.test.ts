import { expect, test } from "vitest";
import { checkCell } from "../../../engine/book/cell.js";
import { withNamedChoices } from "../../../engine/job/named-choices.js";
import { modelOf } from "../../../engine/template/models.js";
import { choiceNamed } from "../../../engine/text/choice.js";
import { unitChoices } from "../../../sheets/tables/trade-units.js";
import { waterfall } from "../../../sheets/templates/waterfall.js";

// Units are written with raised figures wherever a person reads them, and may be typed without.

test.each([
  ["ft2", "ft²"],
  ["yd³", "yd³"],
  ["$/m2", "$/m²"],
  ["m3/hour", "m³/hour"],
  ["FT2", undefined],
  ["ft3", undefined],
])("%s is the unit %s", (typed, unit) => {
  expect(choiceNamed(typed, ["ft²", "yd³", "$/m²", "m³/hour", "ft"])).toBe(unit);
});

test("a text that could be two choices is none of them", () => {
  expect(choiceNamed("m2", ["m²", "m2"])).toBe("m2");
  expect(choiceNamed("m²", ["m2", "m²"])).toBe("m²");
  expect(choiceNamed("ab2", ["ab²", "ab2 "])).toBe("ab²");
});

test("an office book is read with either", () => {
  const column = {
    key: "unit",
    kind: "text",
    choices: ["ft²", "each"],
    means: "Its unit.",
  } as const;
  expect(checkCell(column, "ft2")).toEqual({ value: "ft²" });
  expect(checkCell(column, "yd2")).toMatchObject({ fault: expect.stringContaining("ft², each") });
});

test("so is a job record", () => {
  const model = modelOf(waterfall, "us");
  const record = { inputs: { options: [{ unit: "yd3", description: "yd3" }], customer: "ft2" } };
  expect(withNamedChoices(model, record)).toEqual({
    inputs: { options: [{ unit: "yd³", description: "yd3" }], customer: "ft2" },
  });
});

test("no unit that people choose from is written with plain figures", () => {
  expect(unitChoices.join(" ")).toContain("ft²");
  expect(unitChoices.filter((unit) => /[a-z][23]\b/.test(unit))).toEqual([]);
});
