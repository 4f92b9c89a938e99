import { firstRow } from "../../support/changed-demo.js";
import { asItIs, type FailingCase, pasted } from "./case.js";

/** Inputs of each sheet that asks, pasted beyond their limits, or of a choice that is not in its list. */
export const inputCases: FailingCase[] = [
  ["inputs_right_walk", () => ({ gate_width: 900 })],
  ["inputs_right_decisions", () => ({ hours_a_day: 30 })],
  ["inputs_right_walk", () => firstRow("falls", { width: 900 })],
  ["inputs_right_walk", asItIs, pasted("falls.look[1]", "glass")],
  ["inputs_right_decisions", asItIs, pasted("runs.bed[1]", "glass")],
  ["inputs_right_decisions", () => ({ basin_depth: 40 })],
  ["inputs_right_decisions", () => firstRow("pipe_lines", { override_flow: -1 })],
  ["inputs_right_decisions", () => ({ margin_wanted: 0.95 })],
  // these stand beside the rates that they override
  ["inputs_right_labor", () => ({ tasks: [{ override_rate: -1 }] })],
  ["inputs_right_office_rules", () => ({ years_compared: 99 })],
  ["inputs_right_office_rules", () => ({ seam_lap: 20 })],
];
