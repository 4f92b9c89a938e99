import { formula } from "../../engine/template/index.js";

const affinity =
  "affinity laws: flow as the speed, head as its square, power as its cube (DOE Fundamentals Handbook, Fluid Flow, equations 3-23 to 3-25)";

const CURVE_SLOPE = formula(
  "CURVE_SLOPE",
  "Head that a pump curve gains for each gal/min between two points, in ft (negative)",
  { flow: "gal/min", head: "ft", next_flow: "gal/min", next_head: "ft" },
  "",
  "(next_head-head)/(next_flow-flow)",
  "straight line",
);

const CARRIED_BACK = formula(
  "CARRIED_BACK",
  "Head at which a straight piece of a pump curve would meet zero flow",
  { flow: "gal/min", head: "ft", slope: "" },
  "ft",
  "head-slope*flow",
  "straight line",
);

const LINE_HEAD = formula(
  "LINE_HEAD",
  "Head on a straight piece of a pump curve at a speed (a share of full speed)",
  { flow: "gal/min", start: "ft", slope: "", speed: "" },
  "ft",
  "start*speed^2+slope*speed*flow",
  `straight line; ${affinity}`,
);

const SPEED_FOR_DUTY = formula(
  "SPEED_FOR_DUTY",
  "Speed (a share of full speed) at which a straight piece of a pump curve meets a duty",
  { flow: "gal/min", head: "ft", start: "ft", slope: "" },
  "",
  "(SQRT((slope*flow)^2+4*start*head)-slope*flow)/(2*start)",
  `quadratic in the speed; ${affinity}`,
);

const WATER_POWER = formula(
  "WATER_POWER",
  "Power that goes into the water: Q H / 3960 horsepower of 745.7 W",
  { flow: "gal/min", head: "ft" },
  "W",
  "flow*head/3960*745.7",
  "Hydraulic Institute Engineering Data Book, equation 1.B.4, specific gravity 1",
);

const BETWEEN = formula(
  "BETWEEN",
  "Straight line between two points",
  { at: "gal/min", from: "gal/min", to: "gal/min", low: "W", high: "W" },
  "W",
  "low+(high-low)*(at-from)/(to-from)",
  "straight line",
);

const PUSH_PASS = formula(
  "PUSH_PASS",
  "A nearer flow where a straight piece of a pump curve meets a pipe: Newton's step, from above",
  { flow: "gal/min", friction: "", local: "", slope: "", rest: "ft" },
  "gal/min",
  "flow-(friction*flow^1.852+local*flow^2-slope*flow-rest)/(1.852*friction*flow^0.852+2*local*flow-slope)",
  "Newton's method; the curve of losses is hollow upward, so no step passes the answer",
);

/** Pumps: curve, speed, power. */
export const pumpFormulas = [CURVE_SLOPE, CARRIED_BACK, LINE_HEAD, SPEED_FOR_DUTY, WATER_POWER, BETWEEN, PUSH_PASS];
