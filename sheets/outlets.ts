import {
  calc,
  check,
  count,
  flow,
  head,
  hourlyFlow,
  input,
  lines,
  paragraphs,
  sheet,
  speed,
} from "../engine/template/index.js";
import { outletsTable } from "./outlets/outlets-table.js";

/** The branches: where each delivers, what it loses, how far its valve is closed. */
export const outletsSheet = sheet(
  "Outlets",
  "The branches: flow and head that each needs, and how far to close its valve.",
  [
    outletsTable,
    lines("All outlets", {
      branch_speed_limit: input(speed, "Limit of speed in a branch", {
        default: 8,
        least: 1,
        most: 20,
        source: "usual limit of water pipes in buildings",
      }),
      outlet_count: calc(count, 'COUNTIF(outlets.bore,">0")', "Outlets"),
      total_flow_wanted: calc(flow, "SUM(outlets.flow_wanted)", "Flow wanted of the pump", {
        strong: true,
      }),
      total_flow_wanted_hourly: calc(hourlyFlow, "total_flow_wanted", "The same by the hour"),
      highest_outlet: calc(
        head,
        "MAX(outlets.height)",
        "Highest outlet above the basin's design water level",
        {
          strong: true,
        },
      ),
      manifold_needed: calc(head, "MAX(outlets.head_needed)", "Head the hungriest outlet needs"),
      some_outlets: check(
        "AND(outlet_count>0,total_flow_wanted>0)",
        "No outlet brings water: enter at least one with a pipe size, at a step that has a fall.",
        { label: "There is an outlet" },
      ),
    }),
    paragraphs(
      "Mind",
      "Valve openings come from a published table for plug cocks; no two valves are alike. They are where to start: flows are set finally by eye and meter on site.",
      "A valve that must be nearly closed wears and whistles. Choose a smaller branch pipe before that.",
    ),
  ],
);
