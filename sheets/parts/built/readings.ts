import { calc, check, flow, head, lines, number, percent, table, text } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";

const ofLine = (row: number, column: string): string => `INDEX(pipe_lines.${column},${row})`;

/** Each line that was metered against what the balance gives it. */
export const lineReadings = table(
  "line_readings",
  "Flow against the balance",
  { rows: capacity.lines, beside: "built_lines", shown: "planned>0" },
  {
    reading: calc(text, "line", "Line"),
    off: calc(percent, "IF(AND(planned>0,told=1),SHARE_READ(flow_metered/planned-1),0)", "Over the balance", {
      strong: true,
      zero: "–",
    }),
    manifold: calc(
      head,
      (row) =>
        `IF(flow_metered>0,${ofLine(row, "height")}+LOSS_AT(flow_metered,${ofLine(row, "friction")},${ofLine(row, "local_actual")}),0)`,
      "Manifold head",
      { zero: "–" },
    ),
    means: calc(text, 'IF(told=1,FLOW_MEANS(off),"")', "What it means"),
  },
);

/** What the readings say of pipe, pump and basin. */
export const meterWorkings = lines("Steps from meter to pipe", {
  lines_unmetered: calc(
    number,
    "SUMPRODUCT((built_lines.planned>0)*(built_lines.told=0))",
    "Running lines not metered",
    { decimals: 0 },
  ),
  main_readable: calc(
    number,
    "IF(AND(metered_total>0,lines_unmetered=0,pump_point_count>1),1,0)",
    "All lines metered",
    { decimals: 0 },
  ),
  metered_manifold: calc(
    head,
    "IF(metered_total>0,SUMPRODUCT(built_lines.flow_metered*line_readings.manifold)/metered_total,0)",
    "Manifold head by lines",
    { note: "Mean of the heads that the lines need, by flow.", zero: "none" },
  ),
  metered_piece: calc(
    number,
    "MAX(1,MIN(pump_point_count-1,SUMPRODUCT((pump_points.flow_at_speed<=metered_total+0.000001[gal/min])*pump_points.used)))",
    "Curve segment, metered",
    { decimals: 0 },
  ),
  metered_curve_head: calc(
    head,
    "IF(main_readable=0,0,CURVE_HEAD(metered_total,metered_piece,pump_speed,pump_points.flow,pump_points.head,pump_points.slope))",
    "Head of the curve then",
    { zero: "none" },
  ),
  metered_pump_head: calc(
    head,
    "IF(main_readable=0,0,IF(ISBLANK(head_metered),metered_curve_head,head_metered))",
    "Pump head then",
    { zero: "none", note: "By the gauge, else by the pump's curve." },
  ),
  metered_friction: calc(
    head,
    "IF(main_readable=0,0,metered_pump_head-metered_manifold-LOSS_AT(metered_total,0,main_local))",
    "Friction left for the main",
    { zero: "none" },
  ),
  friction_expected: calc(
    head,
    "IF(main_readable=0,0,LOSS_AT(metered_total,main_friction,0))",
    "Friction by planned C",
    {
      zero: "none",
    },
  ),
  smoothness_state: calc(
    number,
    "IF(main_readable=0,1,IF(friction_expected<0.05*metered_pump_head,2,IF(metered_friction<=0[ft],3,4)))",
    "State of the reading",
    { decimals: 0, note: "1 not all metered, 2 too little friction, 3 no friction left, 4 told." },
  ),
});

export const waterBack = lines("Water, metered", {
  metered_total: calc(flow, "SUM(built_lines.flow_metered)", "Flow metered", { zero: "none" }),
  metered_off: calc(
    percent,
    "IF(AND(main_readable>0,total_flow>0),SHARE_READ(metered_total/total_flow-1),0)",
    "Over the balance",
    {
      zero: "–",
    },
  ),
  smoothness_metered: calc(
    number,
    "IF(smoothness_state=4,smoothness*(friction_expected/metered_friction)^(1/1.852),0)",
    "Hazen-Williams C of the main",
    {
      strong: true,
      decimals: 0,
      zero: "none",
      note: "That which would give the metered flow in the main, all else as planned.",
    },
  ),
  smoothness_said: calc(text, "SMOOTHNESS_MEANS(smoothness_state,smoothness_metered,smoothness)", "Pipe roughness"),
  power_off: calc(
    percent,
    "IF(AND(power_metered>0,pump_watts>0),SHARE_READ(power_metered/pump_watts-1),0)",
    "Power over plan",
    {
      zero: "–",
    },
  ),
  level_off: calc(
    text,
    'IF(ISBLANK(level_metered),"Not told.",LEVEL_MEANS((level_metered-level_running)/1[‹in|cm›],"‹in|cm›"))',
    "Basin level",
  ),
  meter_near_plan: check(
    "OR(main_readable=0,ABS(metered_off)<=0.25)",
    "The flow metered is {metered_off} off the balance, more than rough pipe explains. Meter again, or correct built_lines.flow_metered on sheet Built.",
    { label: "Metered flow far off", level: "look" },
  ),
});
