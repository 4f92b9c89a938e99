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
import { pumpsTable } from "./pumps-table.js";

/** The straight piece of a curve that begins at the last of so many points. */
const piece = (points: string, label: string) =>
  calc(count, `MAX(1,MIN(points-1,${points}))`, label, { working: true });
const upTo = (flow: string) => `POINTS_UP_TO(points,${flow},flow_1..flow_8)`;

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
      { strong: true, zero: "–", note: "Of those large enough." },
    ),
    year_cost: calc(money, "watts*hours_a_day*energy_rate*months_a_year*1[months]", "Power cost per year", {
      decimals: 0,
      zero: "–",
    }),
    years_cost: calc(money, "IF(strong_enough,cost+years_compared*year_cost,0)", "Cost over years", {
      decimals: 0,
      zero: "–",
    }),
    ranked: calc(money, "IF(AND(strong_enough,cost>0),years_cost,0)", "Cost over years, ranked", { working: true }),
    in_running: calc(count, "IF(ranked>0,1,0)", "Ranked", { working: true }),
    mark: calc(
      text,
      'IF(code=pump_code,"← chosen: ","")&PUMP_VERDICT(curve_sound,strong_enough,cost,ranked,cheapest_years_cost)',
      "Verdict",
    ),
    piece: piece("POINTS_OVER(total_design_flow,total_dynamic_head,flow_1..flow_8,head_1..head_8)", "Curve segment"),
    slope: calc(precise, "PIECE_SLOPE(curve_sound,piece,flow_1..flow_8,head_1..head_8)", "Segment slope", {
      working: true,
    }),
    start: calc(head, "PIECE_START(curve_sound,piece,slope,flow_1..flow_7,head_1..head_7)", "Segment head, zero flow", {
      working: true,
    }),
    design_piece: piece(upTo("total_design_flow"), "Curve segment, design flow"),
    design_slope: calc(
      precise,
      "PIECE_SLOPE(curve_sound,design_piece,flow_1..flow_8,head_1..head_8)",
      "Segment slope, design flow",
      { working: true },
    ),
    most_head: calc(
      head,
      "IF(curve_sound,PIECE_HEAD(total_design_flow,design_piece,design_slope,flow_1..flow_7,head_1..head_7),0)",
      "Head at design flow",
      { working: true },
    ),
    full_flow: calc(flow, "total_design_flow/speed_used", "Full-speed flow", { working: true }),
    full_piece: piece(upTo("full_flow"), "Curve segment, full speed"),
    full_head: calc(
      head,
      "IF(curve_sound,PIECE_HEAD(full_flow,full_piece,full_slope,flow_1..flow_7,head_1..head_7),0)",
      "Full-speed head",
      { working: true },
    ),
    full_slope: calc(
      precise,
      "PIECE_SLOPE(curve_sound,full_piece,flow_1..flow_8,head_1..head_8)",
      "Segment slope, full speed",
      { working: true },
    ),
    full_watts: calc(
      power,
      "IF(curve_sound,PIECE_WATTS(full_flow,full_piece,flow_1..flow_8,watts_1..watts_8),0)",
      "Full-speed watts",
      { working: true },
    ),
  },
);
