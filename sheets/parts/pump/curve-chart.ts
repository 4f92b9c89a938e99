import { type Block, calc, chart, count, flow, head, lines, table, text } from "../../../engine/template/index.js";
import { takenAt } from "../balance/network.js";
import { numberedRows, rowNumber } from "../numbered.js";

const last = 10;

/** The points of the chart: the pump's curve, and what the lines take at rising heads. */
const points = table(
  "curve_points",
  "Chart points",
  {
    working: true,
    ...numberedRows(last + 1, "number"),
    note: "System curve: the head that the pump must give for what the lines take at their valve settings.",
  },
  {
    number: rowNumber("Point"),
    of_curve: calc(count, "MAX(1,MIN(number,pump_point_count))", "Curve point"),
    pump_flow: calc(flow, "INDEX(pump_points.flow_at_speed,of_curve)", "Pump flow"),
    pump_head: calc(head, "INDEX(pump_points.head_at_speed,of_curve)", "Pump head"),
    manifold: calc(head, (row) => `actual_manifold*${row - 1}/${last - 2}`, "Manifold head"),
    system_flow: calc(flow, takenAt("manifold", { prefix: "actual" }), "System flow"),
    system_head: calc(head, "manifold+LOSS_AT(system_flow,main_friction,main_local)", "System head"),
  },
);

/** What stands beside the operating point. */
const said = lines("Chart wording", {
  duty_name_along: calc(flow, "total_flow+0.06*MAX(curve_points.pump_flow)", "Name of operating point"),
  duty_said: calc(
    text,
    "~{pump_code} at {pump_speed|0}: {total_flow|0}, {actual_pump_head|1}",
    "Operating point in words",
  ),
});

export const curveChart = chart(
  "Pump curve and system curve",
  "Flow",
  "Head",
  [
    { label: "Pump curve", x: "curve_points.pump_flow", y: "curve_points.pump_head", marks: "line", look: "heavy" },
    {
      label: "System curve",
      x: "curve_points.system_flow",
      y: "curve_points.system_head",
      marks: "line",
      look: "long dashes",
    },
    {
      label: "Operating point",
      x: "total_flow",
      y: "actual_pump_head",
      marks: "points",
    },
    {
      label: "Operating point",
      x: "duty_name_along",
      y: "actual_pump_head",
      marks: "names",
      says: "duty_said",
      at: "right",
    },
  ],
  {
    alt: "Head over flow: the curve of the chosen pump at its speed falls, that of the pipes rises; they cross at the operating point.",
    lines: 15,
  },
);

export const curvePoints: readonly Block[] = [points, said];
