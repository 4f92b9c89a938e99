import {
  type Block,
  calc,
  chart,
  count,
  flow,
  head,
  table,
} from "../../../engine/template/index.js";
import { takenAt } from "../balance/network.js";

const last = 10;

/** The points of the chart: the pump's curve, and what the outlets take as set at rising heads. */
const points = table(
  "curve_points",
  "Points of the chart",
  {
    rows: last + 1,
    note: "The outlets' line: the head that the pump must give for what they take, valves as set.",
  },
  {
    number: calc(count, (row) => String(row), "Point"),
    of_curve: calc(count, "MAX(1,MIN(number,pump_point_count))", "Point of the pump's curve"),
    pump_flow: calc(flow, "INDEX(pump_points.flow_at_speed,of_curve)", "Pump gives"),
    pump_head: calc(head, "INDEX(pump_points.head_at_speed,of_curve)", "at a head of"),
    manifold: calc(head, (row) => `actual_manifold*${row - 1}/${last - 2}`, "Head at the manifold"),
    system_flow: calc(flow, takenAt("manifold", { prefix: "actual" }), "Outlets take"),
    system_head: calc(
      head,
      "manifold+LOSS_AT(system_flow,main_friction,main_local)",
      "for a head at the pump of",
    ),
    duty_flow: calc(flow, "total_flow", "Flow, as set"),
    duty_head: calc(head, "actual_pump_head", "Head, as set"),
  },
);

export const curveChart: readonly Block[] = [
  chart("Pump and outlets", "Flow", "Head", [
    {
      label: "Pump, speed as set",
      x: "curve_points.pump_flow",
      y: "curve_points.pump_head",
      marks: "line",
    },
    {
      label: "Outlets, as set",
      x: "curve_points.system_flow",
      y: "curve_points.system_head",
      marks: "line",
    },
    {
      label: "Where they meet",
      x: "curve_points.duty_flow",
      y: "curve_points.duty_head",
      marks: "points",
    },
  ]),
  points,
];
