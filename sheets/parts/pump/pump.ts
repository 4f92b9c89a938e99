import {
  type Block,
  calc,
  check,
  count,
  decide,
  energy,
  flow,
  head,
  hourlyFlow,
  lines,
  money,
  monthlyCost,
  number,
  office,
  paragraphs,
  percent,
  power,
  smallLength,
  text,
} from "../../../engine/template/index.js";
import { plus } from "../added.js";
import type { Whole } from "../brought.js";
import type { Made } from "../part.js";
import { pumpPoints } from "./chosen-pump.js";
import { curveChart } from "./curve-chart.js";
import { shortlistTable } from "./shortlist-table.js";

const ofPump = (column: string, none: string) => `IF(pump_row>0,INDEX(pumps.${column},MAX(1,pump_row)),${none})`;
const bookOf = (column: string) => `INDEX(pumps.${column},MAX(1,pump_row))`;

const choice = lines("Pump choice", {
  pump_choice: decide(text, "Pump", {
    optional: true,
    choices: "pumps.code",
    note: "Blank: the cheapest over the years of those large enough.",
  }),
  pump_reason: decide(text, "Reason for a dearer pump", {
    optional: true,
    note: "Where the pump chosen is not the cheapest over the years: what the difference buys.",
  }),
  override_speed: decide(percent, "Override speed", {
    optional: true,
    least: 0.1,
    most: 1,
    note: "Blank: calculated for design flow and TDH. A pump of fixed speed runs at 100 %.",
  }),
  least_pump_speed: office(percent, "Least speed, variable-speed pumps", {
    default: 0.3,
    least: 0.1,
    most: 1,
    source: "common practice, no source",
  }),
  pump_efficiency: office(percent, "Efficiency without listed watts", {
    default: 0.35,
    least: 0.05,
    most: 0.9,
    note: "Power into the water over power drawn, where the office book has no watts.",
    source: "common practice, no source: small submersible pumps, motor included",
  }),
  years_compared: office(number, "Years compared", {
    default: 5,
    least: 0,
    most: 30,
    decimals: 0,
  }),
});

const duty = lines("Pump in operation", {
  cheapest_years_cost: calc(money, "LEAST_WHERE(shortlist.ranked,shortlist.in_running,1)", "Least cost over years", {
    working: true,
  }),
  cheapest_pump: calc(
    text,
    'IF(cheapest_years_cost>0,PICK(pumps.code,shortlist.ranked,cheapest_years_cost),"")',
    "Cheapest pump over years",
    { working: true },
  ),
  pump_code: calc(text, "IF(ISBLANK(pump_choice),cheapest_pump,pump_choice)", "Pump", {
    strong: true,
  }),
  pump_row: calc(count, "IF(LEN(pump_code)>0,PLACE_OR_ZERO(pumps.code,pump_code),0)", "Office book row", {
    working: true,
  }),
  pump_point_count: calc(
    count,
    `IF(pump_row>0,IF(INDEX(pumps.curve_sound,MAX(1,pump_row)),INDEX(pumps.points,MAX(1,pump_row)),0),0)`,
    "Curve points",
    { working: true },
  ),
  pump_description: calc(text, `${ofPump("description", '""')}&""`, "Description"),
  pump_dearer: calc(
    money,
    "IF(pump_row>0,MAX(0,INDEX(shortlist.ranked,MAX(1,pump_row))-cheapest_years_cost),0)",
    "Dearer than the cheapest pump",
    { working: true },
  ),
  pump_dearer_said: calc(
    text,
    '~{pump_dearer|0} more over {years_compared|0} years than {cheapest_pump}: {IF(LEN(pump_reason)>0,pump_reason,"no reason is given")}',
    "Dearer pump in words",
    { working: true },
  ),
  pump_why: calc(
    text,
    'IF(OR(pump_row=0,LEN(cheapest_pump)=0),"",IF(pump_code=cheapest_pump,"Cheapest over the years",IF(pump_dearer>0,pump_dearer_said,"")))',
    "Why this pump",
  ),
  pump_price: calc(money, ofPump("cost", "0"), "Cost"),
  pump_minimum_water: calc(smallLength, ofPump("minimum_water", "0"), "Least water, from the bottom", {
    working: true,
  }),
  pump_speed_calculated: calc(
    percent,
    "IF(pump_point_count>0,INDEX(shortlist.speed_used,pump_row),0)",
    "Calculated speed",
    { working: true },
  ),
  pump_speed: calc(
    percent,
    "IF(ISBLANK(override_speed),pump_speed_calculated,MIN(1,MAX(0.01,override_speed)))",
    "Pump speed",
    { strong: true },
  ),
  pump_design_piece: calc(
    count,
    "MAX(1,MIN(pump_point_count-1,SUMPRODUCT((pump_points.flow_at_speed<=total_design_flow+0.000001[gal/min])*pump_points.used)))",
    "Curve segment, design flow",
    { working: true },
  ),
  pump_design_head: calc(
    head,
    "CURVE_HEAD(total_design_flow,pump_design_piece,pump_speed,pump_points.flow,pump_points.head,pump_points.slope)",
    "Pump head, design flow",
    { working: true, zero: "none" },
  ),
  pump_head_shown: calc(text, "~{pump_design_head}", "Pump head shown", { working: true }),
  pump_head_said: calc(text, 'IF(pump_design_head>0,pump_head_shown,"no head")', "Pump head in words", {
    working: true,
  }),
  manifold_available: calc(
    head,
    "IF(pump_point_count>0,MAX(0[ft],pump_design_head-main_loss),highest_head_required)",
    "Manifold head, design flow",
    { working: true, zero: "none" },
  ),
  pump_full_flow: calc(flow, "IF(pump_speed>0,total_flow/pump_speed,0)", "Full-speed flow", { working: true }),
  pump_duty_piece: calc(
    count,
    "MAX(1,MIN(pump_point_count-1,SUMPRODUCT((pump_points.flow<=pump_full_flow+0.000001[gal/min])*pump_points.used)))",
    "Curve segment, operating point",
    { working: true },
  ),
  pump_full_watts: calc(
    power,
    "IF(pump_point_count>1,CURVE_WATTS(pump_full_flow,pump_duty_piece,pump_points.flow,pump_points.watts),0)",
    "Full-speed power",
    { working: true, zero: "none" },
  ),
  pump_water_power: calc(power, "WATER_POWER(total_flow,actual_pump_head)", "Power into water", { working: true }),
  pump_watts: calc(
    power,
    "IF(pump_full_watts>0,pump_full_watts*pump_speed^3,IF(pump_efficiency>0,pump_water_power/pump_efficiency,0))",
    "Pump power",
    {
      strong: true,
      note: "By the cube of the speed. Losses of motor and drive do not fall so fast: at part speed expect more than this, the more the slower.",
    },
  ),
  pump_flow_hourly: calc(hourlyFlow, "total_flow", "Total flow, hourly", { strong: true }),
  pump_head: calc(head, "actual_pump_head", "Pump head", { strong: true }),
});

/** Of the pump and of all that runs with it. */
const cost = ({ added }: Pick<Whole, "added">) => {
  const drawn = `(pump_watts${plus(added("running power"))})`;
  return lines("Running cost", {
    energy_a_month: calc(energy, `${drawn}*hours_a_day*1[months]`, "Energy per month"),
    energy_cost_a_month: calc(monthlyCost, `${drawn}*hours_a_day*energy_rate`, "Power cost per month", {
      strong: true,
      decimals: 0,
    }),
    energy_cost_a_year: calc(money, "energy_cost_a_month*months_a_year*1[months]", "Power cost per year", {
      strong: true,
      decimals: 0,
    }),
    energy_cost_over_years: calc(money, "years_compared*energy_cost_a_year", "Power cost, years compared", {
      decimals: 0,
    }),
  });
};

const inTheBook = "pump_row>0";
const checks = lines("Pump checks", {
  pump_known: check(
    inTheBook,
    "The office book has no such pump, or none gives {total_design_flow} at {total_dynamic_head}. Choose another on sheet Decisions, or add one to the book.",
    { label: "No pump found" },
  ),
  pump_curve_usable: check(
    "OR(pump_row=0,pump_point_count>=3)",
    "The curve of {pump_code} has fewer than 3 points or does not fall: correct it in the office book.",
    { label: "Curve not usable" },
  ),
  pump_strong_enough: check(
    "OR(pump_point_count=0,pump_design_head>=total_dynamic_head-0.01[ft])",
    "{pump_code} gives {pump_head_said} at design flow, but the TDH is {total_dynamic_head}: choose a stronger pump on sheet Decisions or a larger pipe.",
    { label: "Pump too small" },
  ),
  pump_has_reserve: check(
    "OR(pump_point_count=0,INDEX(shortlist.most_head,MAX(1,pump_row))>=head_with_reserve)",
    "{pump_code} at full speed gives less than {head_with_reserve}, the TDH of {total_dynamic_head} with {head_reserve} reserve. Choose a stronger pump or a larger pipe.",
    { label: "Head reserve too small" },
  ),
  pump_speed_possible: check(
    `OR(pump_row=0,ISBLANK(override_speed),pump_speed=1,${ofPump("variable_speed", "FALSE")})`,
    "{pump_code} runs at one speed only, but its override speed is {pump_speed}: clear that on sheet Decisions, or choose a variable-speed pump.",
    { label: "Speed not possible" },
  ),
  pump_inside_curve: check(
    "OR(pump_point_count=0,AND(pump_full_flow>=INDEX(pump_points.flow,1),pump_full_flow<=MAX(pump_points.flow)))",
    "{pump_code} runs at {pump_full_flow} (full-speed flow), outside its published curve: choose another pump on sheet Decisions.",
    { label: "Operating point outside curve" },
  ),
  pump_recommended: check(
    `OR(pump_row=0,IN_RECOMMENDED(pump_full_flow,${bookOf("recommended_low")},${bookOf("recommended_high")}))`,
    "{pump_code} runs at {pump_full_flow} (full-speed flow), outside its recommended range: expect wear. Choose another pump on sheet Decisions.",
    { label: "Outside recommended range", level: "look" },
  ),
  pump_worth_it: check(
    "OR(pump_dearer<1[$],LEN(pump_reason)>0)",
    "{pump_code} costs {pump_dearer|0} more over {years_compared|0} years than {cheapest_pump}. Choose that one, or give the reason in pump_reason on sheet Decisions.",
    { label: "Dearer pump without a reason", level: "look" },
  ),
  pump_water_given: check(
    "OR(pump_row=0,pump_minimum_water>0)",
    "The office book gives no least water for {pump_code}: ask for it, the basin is sized by it.",
    { label: "Least water unknown" },
  ),
  pump_flow_enough: check(
    "OR(pump_row=0,total_flow>=0.95*total_design_flow)",
    "Total flow is {total_flow}, under the design flow of {total_design_flow}: choose a stronger pump or more speed on sheet Decisions.",
    { label: "Total flow too low" },
  ),
  pump_flow_not_too_much: check(
    "OR(pump_row=0,total_flow<=1.1*total_design_flow)",
    "Total flow is {total_flow}, over the design flow of {total_design_flow}: slow the pump on sheet Decisions, or choose a smaller one.",
    { label: "Total flow too high", level: "look" },
  ),
});

/** Which pump, at which speed, for how much a month. */
export const pumpBlocks: readonly (Block | Made<Block>)[] = [
  choice,
  shortlistTable,
  duty,
  pumpPoints,
  cost,
  checks,
  curveChart,
  paragraphs(
    "Notes",
    "Electric work near water is for a licensed electrician. Ground-fault protection, cords, and distances from the water are set by the code in force on site; ask before the bid is signed.",
    "A pump that runs short of water burns out. Keep its least water by a fill valve or a low-water cut-off.",
  ),
];
