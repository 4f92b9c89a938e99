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

const opened = demoRows("outlets").map((row) => ({ ...row, angle_chosen: 0 }));

export const waterCases: FailingCase[] = [
  // falls and their steps
  ["some_falls", () => ({ falls: [] })],
  ["falls.shares_close", () => firstRow("falls", { share_chosen: 0.6 })],
  ["falls.not_starved", () => firstRow("outlets", { flow_chosen: 10 })],
  ["falls.not_flooded", () => firstRow("outlets", { flow_chosen: 130 })],
  [
    "falls.lip_wide_enough",
    () => ({ ...firstRow("falls", { width: 0.4 }), ...firstRow("outlets", { flow_chosen: 60 }) }),
  ],
  ["steps.fed", () => ({ outlets: demoRows("outlets").slice(1) })],
  // stream
  ["reaches.name_alone", () => firstRow("reaches", { name: "Middle run" })],
  ["reaches.step_exists", () => firstRow("reaches", { after_step: 9 })],
  ["reaches.banks_hold", () => firstRow("reaches", { bank_height: 0.1 })],
  // its passes meet on every channel tried; a depth typed over them does not carry the flow
  ["reaches.depth_settled", asItIs, pasted("stream_depths.depth_fourth[1]", 0.2)],
  ["pools.name_alone", () => ({ pools: [...demoRows("pools"), ...demoRows("pools")] })],
  ["pools.step_exists", () => firstRow("pools", { before_step: 9 })],
  // outlets and main
  ["some_outlets", () => ({ outlets: [] })],
  ["outlets.name_alone", () => firstRow("outlets", { name: "Split outlet" })],
  ["outlets.step_exists", () => firstRow("outlets", { enters: 9 })],
  ["outlets.size_known", asItIs, pasted("outlets.pipe_size[1]", "2.3 in")],
  ["outlets.not_too_fast", () => firstRow("outlets", { pipe_size: "1 in" })],
  ["outlets.runs", () => firstRow("outlets", { height_measured: 90 })],
  ["outlets.flow_close", () => firstRow("outlets", { angle_chosen: 60 })],
  ["outlets.valve_in_table", () => firstRow("outlets", { angle_chosen: 80 })],
  ["main_size_known", asItIs, pasted("main_size", "4.3 in")],
  ["main_has_length", () => ({ main_length: 0 })],
  ["main_friction_sure", () => ({ roughness_height: 0.05 })],
  // pump
  ["pump_chosen", () => ({ pump_choice: null })],
  ["pump_known", () => ({ pump_choice: "P-999" })],
  ["pump_curve_usable", asItIs, priced("pumps", pump, { head_2: 0.1 })],
  ["pumps.curve_sound", asItIs, priced("pumps", "P-20", { head_2: 99 })],
  ["pump_speed_possible", () => ({ pump_choice: "P-90", speed_choice: 0.7 })],
  ["pump_inside_curve", asItIs, priced("pumps", pump, firstPoints(3))],
  ["pump_recommended", asItIs, priced("pumps", pump, { recommended_low: 20000 })],
  ["pump_recommended", asItIs, priced("pumps", pump, { recommended_high: 7000 })],
  ["pump_water_given", asItIs, priced("pumps", pump, { minimum_water: 0 })],
  ["pump_flow_enough", () => ({ speed_choice: 0.5 })],
  ["pump_flow_not_too_much", () => ({ speed_choice: 1, outlets: opened })],
  ["pump_under_water", () => ({ basin_depth: 1 })],
  ["open_settled", asItIs, priced("pumps", pump, cliff)],
  ["set_settled", asItIs, priced("pumps", pump, cliff)],
];
