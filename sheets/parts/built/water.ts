import { calc, count, flow, head, input, length, lines, power, table, text } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";
import { toldOrNot } from "./told.js";

/** What runs out of each line, held against the balance. */
export const builtLines = table(
  "built_lines",
  "Flow metered by outlet",
  {
    rows: capacity.lines,
    beside: "pipe_lines",
    shown: "planned>0",
    note: "At the valve settings of sheet Piping, with the pump at the speed of sheet Pump.",
  },
  {
    line: calc(text, "name", "Line"),
    planned: calc(flow, "actual_flow", "Flow planned"),
    flow_metered: input(flow, "Flow metered", { optional: true, least: 0, most: 2000 }),
    told: calc(count, "IF(ISBLANK(flow_metered),0,1)", "Told", toldOrNot),
  },
);

export const builtWater = lines("Pump and basin, metered", {
  head_metered: input(head, "Pump head metered", {
    optional: true,
    least: 0,
    most: 500,
    note: "Gauge at the pump's outlet, and how far that stands over the basin's water. Blank: by the pump's curve.",
  }),
  power_metered: input(power, "Power metered", { optional: true, least: 0, most: 50000 }),
  level_metered: input(length, "Basin level while running", {
    optional: true,
    least: 0,
    most: 30,
    note: "From the basin's bottom, with all water running.",
  }),
});
