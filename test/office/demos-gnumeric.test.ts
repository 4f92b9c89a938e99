import { expect, test } from "vitest";
import { demoFolder, demoJobs } from "../support/demo.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { testStored } from "./stored-demos.js";

// One of each template and system of units; LibreOffice stores the others as well.
const demos = ["bubbling-stones", "hillside-stream", "metric-terrace"];

testStored("Gnumeric", recalculateInGnumeric, demos);

test("these demos are there", () => {
  expect(demoJobs()).toEqual(
    expect.arrayContaining(demos.map((name) => `${demoFolder}${name}.json`)),
  );
});
