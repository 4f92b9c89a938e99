import { describe, expect, test } from "vitest";
import { saidBy } from "../../../engine/evaluate/said-by.js";
import {
  type Changes,
  changedDemo,
  demoRows,
  firstRow,
  model,
  shown,
} from "../../support/changed-demo.js";

const outletsWith = (given: Changes) => ({
  pipe_lines: demoRows("pipe_lines").map((row) => ({ ...row, ...given })),
});

/** Jobs that have no solution somewhere. */
const hopeless: [string, Changes][] = [
  ["a pump too small by far", { pump_choice: "P-20" }],
  ["a main too thin by far", { main_size: "1 in", main_length: 2000 }],
  ["outlets above any pump", outletsWith({ measured_height: 400 })],
  ["more flow than any pump gives", outletsWith({ override_flow: 1900 })],
  ["all lines shut", outletsWith({ override_valve_setting: 90 })],
  ["no flow wanted", outletsWith({ override_flow: 0 })],
  ["no outlets", { pipe_lines: [] }],
  ["no falls", { falls: [] }],
  ["a full line below the bottom", { basin_depth: 1, basin_freeboard: 36 }],
  ["a pool larger than the basin", firstRow("pools", { length: 60, width: 40, depth: 6 })],
  ["a basin like a bucket", { basin_length: 2, basin_width: 2, basin_depth: 1 }],
  ["never running", { hours_a_day: 0.5, splash_share: 0, air_humidity: 1, air_temperature: 120 }],
  ["a chart that does not reach", { working_radius: 60 }],
];

const sheets = ["Falls", "Stream", "Piping", "Balance", "Pump", "Basin", "Stone"];
/** What may be below zero by its meaning: an excess or a lack of head, a slope, a loss given as a gain. */
const signed =
  /excess|slope|_passes\.(low|high)|loss_tee|other_fitting_loss|main_fixed_loss|fittings|gap/;

describe.each(hopeless)("%s", (_, changes) => {
  const values = changedDemo(changes);
  const figures = model.cells.filter(
    ({ sheet, declaration, name, index }) =>
      sheets.includes(sheet) &&
      declaration.kind === "calc" &&
      typeof values[index] === "number" &&
      !signed.test(name),
  );

  test("no figure lies below zero", () => {
    expect(figures.length).toBeGreaterThan(500);
    const negative = figures.filter(({ index }) => (values[index] as number) < -1e-9);
    expect(negative.map(({ id, index }) => `${id} ${values[index]}`)).toEqual([]);
  });

  test("no sentence of a check has a figure below zero", () => {
    const sentences = model.cells
      .filter(({ declaration, index }) => declaration.kind === "check" && values[index] === false)
      .map((cell) => saidBy(model, cell, values))
      .filter((text): text is string => typeof text === "string");
    expect(sentences.filter((text) => /(^|[\s(])-\d/.test(text))).toEqual([]);
  });
});

test("a pump that cannot give the flow gives no head, not less than none", () => {
  const values = changedDemo({ pump_choice: "P-20" });
  expect(shown(values, "pump_strong_enough")).toBe(false);
  expect(shown(values, "pump_design_head")).toBe(0);
  expect(shown(values, "pump_strong_enough_message")).toMatch(
    /^P-20 gives no head at design flow,/,
  );
  expect(shown(values, "manifold_available")).toBe(0);
});

test("a pump that does not reach has no power and no cost of running", () => {
  const values = changedDemo({ pump_choice: "P-20" });
  const rows = model.cells.filter(({ name }) => name === "shortlist.strong_enough");
  let short = 0;
  for (const { row = 0, index } of rows) {
    if (values[index] === true || shown(values, `shortlist.pump[${row}]`) === "") continue;
    short += 1;
    for (const column of ["watts", "year_cost", "years_cost"]) {
      expect(shown(values, `shortlist.${column}[${row}]`)).toBe(0);
    }
  }
  expect(short).toBeGreaterThan(1);
});
