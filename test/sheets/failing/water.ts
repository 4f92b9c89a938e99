import { demoRows, firstRow } from "../../support/changed-demo.js";
import { asItIs, type FailingCase, pasted, priced } from "./case.js";

const pump = "P-200V";
/** The pump's curve cut off after some points. */
const firstPoints = (many: number) =>
  Object.fromEntries(
    ["flow", "head", "watts"].flatMap((name) =>
      [4, 5, 6, 7, 8].filter((k) => k > many).map((k) => [`${name}_${k}`, null]),
    ),
  );

/** A curve that ends in a cliff: no trial head is found on it. */
const cliff = {
  ...firstPoints(3),
  ...{ flow_2: 12000, head_2: 45, flow_3: 12000.000001, head_3: -1e6 },
};

/** One more line, its flow left blank, into a level that lacks none: another line brings more than that. */
const jet = (pot_depth: number) => ({
  pipe_lines: [
    ...demoRows("pipe_lines").map((row, i) => (i === 1 ? { ...row, override_flow: 150 } : row)),
    {
      ...{ name: "Jet", outlet_level: 2, pipe_size: "1-1/2 in", pot_surface: 3, pot_depth },
      siphon_stop: "air break",
    },
  ],
});

const opened = demoRows("pipe_lines").map((row) => ({ ...row, override_valve_setting: 0 }));

export const waterCases: FailingCase[] = [
  // heights that nobody gave, and rod readings that contradict one another
  ["falls.drop_given", () => firstRow("falls", { drop: null })],
  // the second fall stands right under the first: its lip is where the water lands
  ["levels.lands_before_next", () => ({ runs: demoRows("runs").slice(1) })],
  ["runs.runs_down", () => firstRow("runs", { fall: 0 })],
  ["benchmark_read", () => firstRow("pipe_lines", { rod_end: 2 })],
  ["elevations.reads_down", () => ({ elevations: [{ rod_lip: 5, rod_landing: 4 }] })],
  ["elevations.drop_agrees", () => ({ elevations: [{ rod_lip: 3, rod_landing: 6 }] })],
  [
    "elevations.fall_agrees",
    () => ({
      elevations: [
        { rod_lip: 3, rod_landing: 4.5 },
        { rod_lip: 8, rod_landing: 10 },
      ],
    }),
  ],
  // falls and their steps
  ["some_falls", () => ({ falls: [] })],
  ["falls.shares_close", () => firstRow("falls", { override_share: 0.6 })],
  ["falls.flow_enough", () => firstRow("pipe_lines", { override_flow: 10 })],
  ["falls.flow_not_excessive", () => firstRow("pipe_lines", { override_flow: 130 })],
  [
    "falls.lip_wide_enough",
    () => ({
      ...firstRow("falls", { width: 0.4 }),
      ...firstRow("pipe_lines", { override_flow: 60 }),
    }),
  ],
  ["levels.has_line", () => ({ pipe_lines: demoRows("pipe_lines").slice(1) })],
  // stream
  ["runs.name_unique", () => firstRow("runs", { name: "Middle run" })],
  ["runs.level_exists", () => firstRow("runs", { after_level: 9 })],
  ["runs.banks_hold", () => firstRow("runs", { bank_height: 0.1 })],
  // its passes meet on every channel tried; a depth typed over them does not carry the flow
  ["runs.depth_settled", asItIs, pasted("stream_depths.depth_fourth[1]", 0.2)],
  ["pools.name_unique", () => ({ pools: [...demoRows("pools"), ...demoRows("pools")] })],
  ["pools.level_exists", () => firstRow("pools", { before_level: 9 })],
  // outlets and main
  ["some_lines", () => ({ pipe_lines: [] })],
  ["pipe_lines.name_unique", () => firstRow("pipe_lines", { name: "Split outlet" })],
  ["pipe_lines.level_exists", () => firstRow("pipe_lines", { outlet_level: 9 })],
  ["pipe_lines.size_known", asItIs, pasted("pipe_lines.pipe_size[1]", "2.3 in")],
  ["pipe_lines.pot_given", () => firstRow("pipe_lines", { pot_rise: 1, pot_depth: 0 })],
  [
    "pipe_lines.pot_siphon_answered",
    () =>
      firstRow("pipe_lines", {
        above_water: 2,
        siphon_stop: "nothing",
        pot_surface: 6,
        pot_depth: 14,
      }),
  ],
  ["pipe_lines.pot_gets_flow", () => jet(24)],
  ["pipe_lines.gets_flow", () => jet(0)],
  ["pipe_lines.not_too_fast", () => firstRow("pipe_lines", { pipe_size: "1 in" })],
  ["pipe_lines.has_flow", () => firstRow("pipe_lines", { measured_height: 90 })],
  ["pipe_lines.flow_close", () => firstRow("pipe_lines", { override_valve_setting: 60 })],
  ["pipe_lines.valve_in_table", () => firstRow("pipe_lines", { override_valve_setting: 80 })],
  ["main_size_known", asItIs, pasted("main_size", "4.3 in")],
  ["main_has_length", () => ({ main_length: 0 })],
  ["main_friction_sure", () => ({ roughness_height: 0.05 })],
  // pump
  ["pump_known", () => ({ pump_choice: "P-999" })],
  ["pump_curve_usable", asItIs, priced("pumps", pump, { head_2: 0.1 })],
  ["pumps.curve_sound", asItIs, priced("pumps", "P-20", { head_2: 99 })],
  ["pump_speed_possible", () => ({ pump_choice: "P-90", override_speed: 0.7 })],
  ["pump_inside_curve", asItIs, priced("pumps", pump, firstPoints(3))],
  ["pump_recommended", asItIs, priced("pumps", pump, { recommended_low: 20000 })],
  ["pump_recommended", asItIs, priced("pumps", pump, { recommended_high: 7000 })],
  ["pump_worth_it", () => ({ pump_reason: null })],
  ["pump_water_given", asItIs, priced("pumps", pump, { minimum_water: 0 })],
  ["pump_flow_enough", () => ({ override_speed: 0.5 })],
  ["pump_flow_not_too_much", () => ({ override_speed: 1, pipe_lines: opened })],
  ["pump_under_water", () => ({ basin_depth: 1 })],
  ["open_converged", asItIs, priced("pumps", pump, cliff)],
  ["actual_converged", asItIs, priced("pumps", pump, cliff)],
  ["clarifier_in_limit", () => ({ clarifier_included: true, clarifier_flow_limit: 20 })],
];
