import { describe, expect, test } from "vitest";
import { type Demo, demoRows, firstRow, waterfallDemo } from "../support/changed-demo.js";
import { bubblingCases, bubblingDemo } from "./failing/bubbling.js";
import { builtCases } from "./failing/built.js";
import type { FailingCase } from "./failing/case.js";
import { groundCases } from "./failing/ground.js";
import { inputCases } from "./failing/inputs.js";
import { moneyCases } from "./failing/money.js";
import { waterCases } from "./failing/water.js";

/** The line into the pool ends at its bottom, and nothing stops the siphon. */
const open = {
  pipe_lines: demoRows("pipe_lines").map((row) => ({ ...row, end_below_water: null })),
};

/** A line that ends under water, in nothing that anyone has named. */
const uncounted = { siphon_stop: null, above_water: 0, pot_depth: 0 };

const gravel = {
  name: "gravel",
  stone: "gravel",
  covers: "stream bed",
  share: 1,
  width: 0,
  thickness: 0.25,
  voids: 0.4,
};

/** Each: the check, and a change of the demo job that must make it say no. */
const cases: FailingCase[] = [
  ...waterCases,
  ...groundCases,
  ...moneyCases,
  ...inputCases,
  ...builtCases,
  ["basin_holds", () => ({ basin_length: 3, basin_width: 3, basin_depth: 2 })],
  // a deep pool, drawn down to the end of the line at its bottom
  ["basin_holds", () => ({ ...firstRow("pools", { length: 14, width: 10, depth: 10 }), ...open })],
  ["pool_siphons.keeps_water", () => open],
  [
    "pipe_lines.end_is_above",
    () => firstRow("pipe_lines", { siphon_stop: "end above water", above_water: 0 }),
  ],
  [
    "pipe_lines.break_has_height",
    () => firstRow("pipe_lines", { siphon_stop: "air break", above_water: 0 }),
  ],
  ["pipe_lines.siphon_counted", () => ({ ...firstRow("pipe_lines", uncounted), pools: [] })],
  ["pipe_fits_way", () => ({ main_length: 90 })],
  ["pipe_lines.height_agrees", () => firstRow("pipe_lines", { measured_height: 12 })],
  ["float_spills_nothing", () => ({ override_float: 4 })],
  ["float_covers_pump", () => ({ override_float: 46 })],
  ["float_keeps_days", () => ({ override_float: 40 })],
  ["basin_not_oversize", () => ({ basin_length: 30, basin_width: 15 })],
  ["lift_matches_level", () => ({ rim_above_water: 0 })],
  ["rain_held", () => ({ design_rain: 12, overflow_place: null })],
  ["air_gap_enough", () => ({ air_gap: 0.5 })],
  ["digs.protected", () => ({ basin_depth: 6 })],
  // a deep trench that others dig
  ["digs.protected", () => ({ trenches: [{ shared: true, depth: 66 }] })],
  ["dig_within_tables", () => firstRow("walls", { height: 20, cut_bank: true })],
  ["ladders_enough", () => ({ ladders_brought: 0 })],
  ["berms.stands", () => firstRow("berms", { slope: 1 })],
  ["berms.stands", () => firstRow("berms", { end_slope: 0 })],
  ["walls.permitted", () => firstRow("walls", { height: 4 })],
  ["walls.permitted", () => firstRow("walls", { bank_above: 2.5 })],
  ["walls.permitted", () => firstRow("walls", { loaded: true })],
  ["trees.kept", () => firstRow("trees", { distance: 14, fill_planned: 2, wall_built: true })],
  ["trees.berm_counted", () => firstRow("trees", { distance: 14, fill_planned: 0.2 })],
  ["trees.uncut", () => firstRow("trees", { dig_distance: 5 })],
  ["pools.fenced", () => firstRow("pools", { depth: 2 })],
  ["vault_planned", () => ({ vaults_needed: 0 })],
  ["vault_in_depth", () => ({ vault_height: 60 })],
  ["basin_hidden", () => ({ basin_freeboard: 0 })],
  ["temperatures_plausible", () => ({ temperature_scale: "C" })],
  ["temperatures_plausible", () => ({ air_temperature: 135 })],
  ["dirt_set_back", () => ({ dirt_setback: 1 })],
  ["trenches.holds_bedding", () => ({ trenches: [{ bedding: 24 }] })],
  ["beds_bought.bed_bought", () => ({ stone_places: [{ ...gravel, bed: "gravel" }] })],
  ["stone_places.measured", () => ({ stone_places: [gravel] })],
  ["breaker_carries", () => ({ supply_voltage: 120 })],
  ["wire_protected", () => ({ breaker_rating: 30 })],
  ["circuit_drop_low", () => ({ panel_distance: 300 })],
  ["light_drop_low", () => ({ light_power: 50, cable_a_light: 100 })],
  ["electrician_quoted", () => ({ subcontracts: [] })],
  ["quote_fits_work", () => ({ electrical_work: "by the customer" })],
  ["machine_lifts", () => ({ working_radius: 14, machine_choice: "micro" })],
  ["machine_fits", () => ({ machine_choice: "micro" })],
  ["weather_of_place", () => ({ rain_is_local: false })],
  ["faces_have_stone", () => ({ stone_places: [gravel] })],
  ["runs.banks_hold", () => firstRow("runs", { bank_height: 0.3 })],
  ["runs.runs_calm", () => firstRow("runs", { bed: "troweled mortar" })],
  [
    "runs.laws_agree",
    () => ({
      ...firstRow("runs", { bed: "stone set in mortar", width: 0.5, fall: 0.05, side: 0 }),
    }),
  ],
  ["falls.name_unique", () => firstRow("falls", { name: "Terrace fall" })],
  ["falls.has_drop", () => firstRow("falls", { drop: 0 })],
  ["main_not_too_fast", () => ({ main_size: "2 in" })],
  ["pump_strong_enough", () => ({ pump_choice: "P-20" })],
  ["pump_has_reserve", () => ({ pump_choice: "P-90", head_reserve: 0.5 })],
  ["pipe_counted", () => firstRow("pipe_lines", { pipe_size: "2-1/2 in" })],
];

/** What is open in every job until somebody has looked: here it is settled, so that these checks say yes. */
const settled: FailingCase = [
  "",
  () => ({
    ...{
      cave_in_signs: "no signs",
      dig_inspected_by: "Invented foreman",
      dig_inspected_on: "2027-04-05",
    },
    ...{ weather_is_local: true, storm_is_local: true, rain_is_local: true, design_rain: 0 },
    ...{ basin_length: 8, basin_width: 8, liner_by_machine: true, start_month: 12 },
  }),
];

const known = new Map<FailingCase, Set<string>>();

const failingOf =
  ({ changedDemo, failingIn }: Demo) =>
  (one: FailingCase): Set<string> => {
    const [, inputs, elsewhere] = one;
    const found = known.get(one) ?? failingIn(changedDemo(inputs(), elsewhere?.()));
    known.set(one, found);
    return found;
  };

const checksOf = ({ model }: Demo) =>
  new Set(
    model.cells.filter(({ declaration }) => declaration.kind === "check").map(({ name }) => name),
  );

/** In December none of the demo's prices has ended before the work starts. */
const early: FailingCase = ["", () => ({ start_month: 12 })];

const demos = [
  { name: "waterfall", demo: waterfallDemo, cases, settled },
  { name: "bubbling stones", demo: bubblingDemo, cases: bubblingCases, settled: early },
];

describe.each(demos)(
  "$name: a check that cannot fail is no check",
  ({ name, demo, cases, settled }) => {
    const all = checksOf(demo);
    const failing = failingOf(demo);
    // a check of a part that both have is tried with the waterfall
    const elsewhere = name === "waterfall" ? new Set<string>() : checksOf(waterfallDemo);

    test.each(cases.map((one) => [one[0], one] as const))("%s", (check, one) => {
      expect(failing(one)).toContain(check);
    });

    test("every check of the template stands in the table of cases", () => {
      const cased = new Set(cases.map(([check]) => check));
      expect([...all].filter((check) => !cased.has(check) && !elsewhere.has(check))).toEqual([]);
      expect([...cased].filter((check) => !all.has(check))).toEqual([]);
    });

    test("no check says no whatever the job", () => {
      const runs = [settled, ...cases].map(failing);
      expect([...all].filter((check) => runs.every((found) => found.has(check)))).toEqual([]);
    });
  },
);
