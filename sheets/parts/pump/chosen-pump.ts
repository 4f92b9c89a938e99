import { calc, flow, head, power, precise, table, yesno } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";
import { numberedRows, rowNumber } from "../numbered.js";

const at = (name: string) => (row: number) => `IF(used,INDEX(pumps.${name}_${row},pump_row),0)`;

/** The curve of the chosen pump at full speed. */
export const pumpPoints = table(
  "pump_points",
  "Chosen pump curve, full speed",
  { working: true, ...numberedRows(capacity.curvePoints, "number") },
  {
    number: rowNumber("Point"),
    used: calc(yesno, "number<=pump_point_count", "Used"),
    flow: calc(flow, at("flow"), "Flow"),
    head: calc(head, at("head"), "Head"),
    watts: calc(power, at("watts"), "Power"),
    slope: calc(
      precise,
      (row) =>
        row < capacity.curvePoints
          ? `IF(number<pump_point_count,CURVE_SLOPE(flow,head,INDEX(pumps.flow_${row + 1},pump_row),INDEX(pumps.head_${row + 1},pump_row)),0)`
          : "0",
      "Slope of next segment",
    ),
    flow_at_speed: calc(flow, "flow*pump_speed", "Flow at pump speed"),
    head_at_speed: calc(head, "head*pump_speed^2", "Head at pump speed"),
  },
);
