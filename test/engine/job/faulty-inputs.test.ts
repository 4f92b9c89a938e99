import { expect, test } from "vitest";
import { faultyInputInWords, faultyInputs } from "../../../engine/job/faulty-inputs.js";
import { newJob } from "../../../engine/job/start.js";
import { valuesAsGiven } from "../../../engine/job/values.js";
import { modelOf } from "../../../engine/template/models.js";
import { waterfall } from "../../../sheets/templates/waterfall.js";

/** An input that breaks its rule is named with its cell, its label, its value and the rule. */

const model = modelOf(waterfall, "us");
const brokenBy = (id: string, value: string | number) => {
  const values = valuesAsGiven(model, newJob(model, "yard"));
  values[model.byId.get(id)?.index as number] = value;
  return faultyInputs(model, values).map(faultyInputInWords);
};

test("what is chosen from a table, and from a list", () => {
  expect(brokenBy("falls.look[1]", "waterfall")).toEqual([
    expect.stringMatching(
      /^Walk!G18 Look \(falls\.look\[1\]\): "waterfall" is not one of .*normal sheet/,
    ),
  ]);
  expect(brokenBy("pipe_lines.siphon_stop[1]", "a prayer")).toEqual([
    expect.stringMatching(
      /^Decisions!\S+ Siphon stopped by \(pipe_lines\.siphon_stop\[1\]\): "a prayer" is not one of nothing, /,
    ),
  ]);
});

test("one of the choices is none of these, in whatever case", () => {
  expect(brokenBy("falls.look[1]", "normal sheet")).toEqual([]);
  expect(brokenBy("falls.look[1]", "Normal Sheet")).toEqual([]);
});

test.each([
  [
    "margin_wanted",
    25,
    "Profit margin wanted (margin_wanted): 2500% is not 0% to 60%. For 25% type 25% or 0.25.",
  ],
  ["falls.width[1]", 70, "Lip width (falls.width[1]): 70 ft is not 0 to 60 ft."],
  [
    "start_month",
    4.5,
    "Starting month, 1 to 12 (start_month): 4.5 is not a whole number, 1 to 12.",
  ],
])("a number beyond the limits of %s", (id, value, sentence) => {
  expect(brokenBy(id, value)).toEqual([expect.stringContaining(sentence)]);
});

test("a number within them is none of these, and neither is any default", () => {
  expect(brokenBy("margin_wanted", 0.25)).toEqual([]);
});
