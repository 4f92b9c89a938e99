import { expect, test } from "vitest";
import { appended } from "../../../../engine/job/trail/chain.js";
import type { Change } from "../../../../engine/job/trail/entry.js";
import { longestTrail, mustFitWorkbook } from "../../../../engine/job/trail/longest.js";

const change = (i: number, note = ""): Change => ({
  time: "2026-05-04T09:00:00.000Z",
  by: "Estimator A",
  input: "height",
  old: i,
  new: i + 1,
  unit: "ft",
  from: "measured on site",
  ...(note === "" ? {} : { note }),
});
const trail = (entries: number, note = "") =>
  appended(
    [],
    Array.from({ length: entries }, (_, i) => change(i, note)),
  );

test("as many entries as a workbook carries, and no more", () => {
  const { entries } = longestTrail;
  expect(() => mustFitWorkbook(trail(entries), "job.json")).not.toThrow();
  expect(() => mustFitWorkbook(trail(entries + 1), "job.json")).toThrow(
    /job\.json has 3001 entries; a workbook carries at most 3000.*rillbook shorten job\.json -o job-short\.json/,
  );
});

test("a workbook with more is taken into a record first", () => {
  expect(() => mustFitWorkbook(trail(longestTrail.entries + 1), "yard.xlsx")).toThrow(
    /rillbook take yard\.xlsx -o yard\.json\), make .*rillbook shorten yard\.json -o yard-short\.json/,
  );
});

test("fewer entries with long notes may be too much as well", () => {
  expect(() => mustFitWorkbook(trail(2000, "n".repeat(1000)), "job.json")).toThrow(/1500000/);
});
