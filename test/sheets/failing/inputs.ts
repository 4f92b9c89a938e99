import { firstRow } from "../../support/changed-demo.js";
import { asItIs, type FailingCase, pasted } from "./case.js";

/** One input of each sheet pasted beyond its limits, or of a choice that is not in its list. */
export const inputCases: FailingCase[] = [
  ["inputs_right_job", () => ({ hours_a_day: 30 })],
  ["inputs_right_falls", () => firstRow("falls", { width: 900 })],
  ["inputs_right_stream", asItIs, pasted("runs.bed[1]", "glass")],
  ["inputs_right_piping", () => firstRow("pipe_lines", { elbows_90: 1.5 })],
  ["inputs_right_pump", () => ({ years_compared: 99 })],
  ["inputs_right_basin", () => ({ basin_depth: 40 })],
  ["inputs_right_liner", () => ({ seam_lap: 20 })],
  ["inputs_right_stone", () => ({ working_radius: -1 })],
  ["inputs_right_earthwork", () => ({ trench_depth: 1000 })],
  ["inputs_right_labor", () => ({ crew_size: 0 })],
  ["inputs_right_schedule", () => ({ rain_confidence: 1 })],
  ["inputs_right_electric", () => ({ lights_wanted: -1 })],
  ["inputs_right_materials", () => ({ bulk_weight: -1 })],
  ["inputs_right_price", () => ({ margin_wanted: 0.95 })],
];
