import { expect, test } from "vitest";
import { brokenChoiceInWords, brokenChoices } from "../../../engine/job/broken-choices.js";
import { newJob } from "../../../engine/job/start.js";
import { valuesAsGiven } from "../../../engine/job/values.js";
import { modelOf } from "../../../engine/template/models.js";
import { waterfall } from "../../../sheets/templates/waterfall.js";

/** A choice that is none is named with its cell, its label and the choices. */

const model = modelOf(waterfall, "us");
const brokenBy = (id: string, value: string) => {
  const values = valuesAsGiven(model, newJob(model, "yard"));
  values[model.byId.get(id)?.index as number] = value;
  return brokenChoices(model, values).map(brokenChoiceInWords);
};

test("what is chosen from a table, and from a list", () => {
  expect(brokenBy("falls.look[1]", "waterfall")).toEqual([
    expect.stringMatching(/^Walk!G18 Look: "waterfall" is not one of .*normal sheet/),
  ]);
  expect(brokenBy("pipe_lines.siphon_stop[1]", "a prayer")).toEqual([
    expect.stringMatching(/^Decisions!\S+ Siphon stopped by: "a prayer" is not one of nothing, /),
  ]);
});

test("one of the choices is none of these, in whatever case", () => {
  expect(brokenBy("falls.look[1]", "normal sheet")).toEqual([]);
  expect(brokenBy("falls.look[1]", "Normal Sheet")).toEqual([]);
});
