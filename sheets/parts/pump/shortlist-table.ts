import {
  calc,
  count,
  flow,
  head,
  money,
  percent,
  power,
  precise,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { curvePoints, pumpsTable } from "./pumps-table.js";

const pick = (name: string, at: string, from = 1) =>
  `CHOOSE(${at},${curvePoints
    .slice(0, -1)
    .map((k) => `${name}_${k + from - 1}`)
    .join(",")})`;
const counted = (condition: (k: number) => string) =>
  curvePoints.map((k) => `IF(AND(points>=${k},${condition(k)}),1,0)`).join("+");
const piece = (name: string, label: string) => calc(count, `MAX(1,MIN(points-1,${name}))`, label);

/** A duty on a point of a curve counts as past it in every program, whatever its last digits. */
const tie = "0.000001[gal/min]";

/** Every pump of the book for this job: is it large enough, how fast, what does it cost over the years? */
export const shortlistTable = table(
  "shortlist",
  "Pumps compared for this job",
  {
    rows: pumpsTable.rows,
    beside: "pumps",
    filled: "LEN(code)>0",
    note: "Speed by the affinity laws: on each straight piece of the curve the speed for a duty is the root of a quadratic.",
  },
  {
    pump: calc(text, "code", "Pump"),
    strong_enough: calc(
      yesno,
      "AND(curve_sound,speed_needed>0,speed_needed<=1,most_head>=head_with_reserve)",
      "Large enough with reserve",
    ),
    speed_needed: calc(
      percent,
      "IF(AND(curve_sound,total_design_flow>0),SPEED_FOR_DUTY(total_design_flow,total_dynamic_head,start,slope),0)",
      "Speed needed",
    ),
    speed_used: calc(percent, "IF(variable_speed,MIN(1,MAX(0.05,least_pump_speed,speed_needed)),1)", "Speed used", {
      strong: true,
    }),
    watts: calc(
      power,
      "IF(strong_enough,speed_used^3*IF(full_watts>0,full_watts,WATER_POWER(full_flow,full_head)/pump_efficiency),0)",
      "Pump power",
      { strong: true, zero: "none", note: "Of those large enough." },
    ),
    year_cost: calc(money, "watts*hours_a_day*energy_rate*months_a_year*1[months]", "Power cost per year", {
      zero: "none",
    }),
    years_cost: calc(money, "IF(strong_enough,cost+years_compared*year_cost,0)", "Cost over years", { zero: "none" }),
    ranked: calc(money, "IF(AND(strong_enough,cost>0),years_cost,0)", "Cost over years, ranked", {
      zero: "none",
    }),
    in_running: calc(count, "IF(ranked>0,1,0)", "Ranked"),
    mark: calc(
      text,
      'IF(NOT(curve_sound),"curve not usable",IF(NOT(strong_enough),"too small",IF(cost<=0,"no price",IF(ranked=cheapest_years_cost,"← cheapest over years","large enough"))))',
      "Verdict",
    ),
    points_over: calc(
      count,
      counted((k) => `head_${k}*total_design_flow^2>total_dynamic_head*flow_${k}^2`),
      "Points over duty parabola",
    ),
    piece: piece("points_over", "Curve segment"),
    slope: calc(
      precise,
      `IF(curve_sound,CURVE_SLOPE(${pick("flow", "piece")},${pick("head", "piece")},${pick("flow", "piece", 2)},${pick("head", "piece", 2)}),0)`,
      "Segment slope",
    ),
    start: calc(
      head,
      `IF(curve_sound,CARRIED_BACK(${pick("flow", "piece")},${pick("head", "piece")},slope),0)`,
      "Segment head, zero flow",
    ),
    points_below_design: calc(
      count,
      counted((k) => `flow_${k}<=total_design_flow+${tie}`),
      "Points up to design flow",
    ),
    design_piece: piece("points_below_design", "Curve segment, design flow"),
    design_slope: calc(
      precise,
      `IF(curve_sound,CURVE_SLOPE(${pick("flow", "design_piece")},${pick("head", "design_piece")},${pick("flow", "design_piece", 2)},${pick("head", "design_piece", 2)}),0)`,
      "Segment slope, design flow",
    ),
    most_head: calc(
      head,
      `IF(curve_sound,MAX(0,LINE_HEAD(total_design_flow,CARRIED_BACK(${pick("flow", "design_piece")},${pick("head", "design_piece")},design_slope),design_slope,1)),0)`,
      "Head at design flow",
      { zero: "none" },
    ),
    full_flow: calc(flow, "total_design_flow/speed_used", "Full-speed flow"),
    points_below: calc(
      count,
      counted((k) => `flow_${k}<=full_flow+${tie}`),
      "Points up to full-speed flow",
    ),
    full_piece: piece("points_below", "Curve segment, full speed"),
    full_head: calc(
      head,
      `IF(curve_sound,MAX(0,LINE_HEAD(full_flow,CARRIED_BACK(${pick("flow", "full_piece")},${pick("head", "full_piece")},full_slope),full_slope,1)),0)`,
      "Full-speed head",
      { zero: "none" },
    ),
    full_slope: calc(
      precise,
      `IF(curve_sound,CURVE_SLOPE(${pick("flow", "full_piece")},${pick("head", "full_piece")},${pick("flow", "full_piece", 2)},${pick("head", "full_piece", 2)}),0)`,
      "Segment slope, full speed",
    ),
    full_watts: calc(
      power,
      `IF(curve_sound,MAX(0,BETWEEN(full_flow,${pick("flow", "full_piece")},${pick("flow", "full_piece", 2)},${pick("watts", "full_piece")},${pick("watts", "full_piece", 2)})),0)`,
      "Full-speed watts",
      { zero: "none" },
    ),
  },
);
