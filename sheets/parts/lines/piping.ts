import {
  type Block,
  calc,
  check,
  count,
  flow,
  head,
  hourlyFlow,
  length,
  lines,
  office,
  paragraphs,
  speed,
} from "../../../engine/template/index.js";
import type { LineEnds } from "../line-ends.js";
import { mainNotes } from "../main/main.js";

/** What all lines take together. */
export const allLines = ({ someLines }: Pick<LineEnds, "someLines">): Block =>
  lines("All lines", {
    line_speed_limit: office(speed, "Speed limit, lines", {
      default: 8,
      least: 1,
      most: 20,
      source: "usual limit of water pipes in buildings",
    }),
    height_tolerance: office(length, "Tolerance of measured heights", {
      default: 0.5,
      least: 0,
      most: 10,
      note: "Between the measured height of an outlet and what drops, runs and rim add up to.",
      source: "common practice, no source",
    }),
    line_count: calc(count, "SUMPRODUCT((pipe_lines.bore>0)*1)", "Number of lines"),
    total_design_flow: calc(flow, "SUM(pipe_lines.design_flow)", "Total design flow", {
      strong: true,
    }),
    total_design_flow_hourly: calc(hourlyFlow, "total_design_flow", "Total design flow, hourly"),
    highest_outlet: calc(head, "MAX(pipe_lines.height_open)", "Highest outlet above basin water", {
      strong: true,
    }),
    highest_head_required: calc(head, "MAX(pipe_lines.head_required)", "Highest head required"),
    some_lines: check("AND(line_count>0,total_design_flow>0)", `No line brings water: ${someLines}.`, {
      label: "No lines",
    }),
  });

export const pipingNotes = paragraphs(
  "Notes",
  "Valve settings are degrees turned from fully open, by a published table for plug cocks; no two valves are alike. They are where to start: flows are set finally by eye and meter on site.",
  "A valve that must be nearly closed wears and whistles. Choose a smaller pipe for the line before that.",
  "When the pump stops, water runs back. A line that ends under water siphons: it draws off what it ends in, down to its end. An air break must stand above that water and stay open; a check valve may leak or stick, so leave the basin room for its water where a spill would do harm.",
  "A check valve in the main does not keep a line full that ends higher than another: it runs out through the lower one.",
  ...mainNotes,
);
