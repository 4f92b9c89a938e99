import {
  columnOf,
  count,
  flow,
  formula,
  head,
  hourlyFlow,
  money,
  number,
  percent,
  power,
  precise,
  speed,
  text,
  yesno,
} from "../../engine/template/index.js";

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

const CURVE_HEAD = formula(
  "CURVE_HEAD",
  "Head that a pump gives at a flow on a straight piece of its curve, at a speed; 0 beyond its reach",
  {
    at: flow,
    piece: count,
    speed: percent,
    flows: columnOf(flow),
    heads: columnOf(head),
    slopes: columnOf(precise),
  },
  head,
  "MAX(0[ft],LINE_HEAD(at,CARRIED_BACK(INDEX(flows,piece),INDEX(heads,piece),INDEX(slopes,piece)),INDEX(slopes,piece),speed))",
  `straight line; ${affinity}`,
);

const CURVE_WATTS = formula(
  "CURVE_WATTS",
  "Power that a pump draws at a flow on a straight piece of its curve",
  { at: flow, piece: count, flows: columnOf(flow), watts: columnOf(power) },
  power,
  "MAX(0[W],BETWEEN(at,INDEX(flows,piece),INDEX(flows,piece+1),INDEX(watts,piece),INDEX(watts,piece+1)))",
  "straight line",
);

const IN_RECOMMENDED = formula(
  "IN_RECOMMENDED",
  "Is a flow in the range that a maker recommends? An upper end of 0 is not given",
  { at: flow, low: hourlyFlow, high: hourlyFlow },
  yesno,
  "AND(at>=low,OR(high<=0,at<=high))",
  "definition",
);

const SIZE_VERDICT = formula(
  "SIZE_VERDICT",
  "What a size of main does, in words",
  { points_past: number, most: hourlyFlow, wanted: flow, speed, limit: speed },
  text,
  'IF(points_past<1,"the pump cannot lift to the highest outlet",IF(most<wanted,"too small for design flow",IF(speed>limit,"faster than the limit","fits")))',
  "definition",
);

const PUMP_VERDICT = formula(
  "PUMP_VERDICT",
  "How a pump of the book does among the others, in words",
  { sound: yesno, strong: yesno, cost: money, ranked: money, least: money },
  text,
  'IF(NOT(sound),"curve not usable",IF(NOT(strong),"too small",IF(cost<=0,"no price",IF(ranked=least,"cheapest over years","large enough"))))',
  "definition",
);

/** Pumps: curve, speed, power. */
export const pumpFormulas = [
  CURVE_SLOPE,
  CARRIED_BACK,
  LINE_HEAD,
  SPEED_FOR_DUTY,
  WATER_POWER,
  BETWEEN,
  PUSH_PASS,
  CURVE_HEAD,
  CURVE_WATTS,
  IN_RECOMMENDED,
  SIZE_VERDICT,
  PUMP_VERDICT,
];
