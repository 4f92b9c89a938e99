import { columnOf, count, flow, formula, length, percent, smallLength, speed } from "../../engine/template/index.js";
import { waterVolume } from "./quantities.js";

const francis = "Francis weir formula: EPA SWMM Reference Manual II, section 6.3.2, equation 6-22";

const WEIR_FLOW = formula(
  "WEIR_FLOW",
  "Flow over a lip; `ends` counts the ends at which the sheet draws in",
  { head: "ft", width: "ft", ends: "", coefficient: "" },
  "ft³/s",
  "coefficient*(width-0.1*ends*head)*head^1.5",
  francis,
);

const WEIR_HEAD = formula(
  "WEIR_HEAD",
  "Depth of water above a lip that a flow needs, without contraction at its ends",
  { flow: "ft³/s", width: "ft", coefficient: "" },
  "ft",
  "(flow/(coefficient*width))^(2/3)",
  francis,
);

const NARROWED_WIDTH = formula(
  "NARROWED_WIDTH",
  "Width of a lip less what the sheet draws in at its ends, but at least a tenth",
  { width: length, ends: count, depth: smallLength },
  length,
  "MAX(width-0.1*ends*depth,0.1*width)",
  francis,
);

const CRITICAL_DEPTH = formula(
  "CRITICAL_DEPTH",
  "Critical depth of a flow in a rectangular section",
  { flow, width: length },
  smallLength,
  "((flow/width)^2/32.174[ft/s²])^(1/3)",
  "energy equation; g 32.174 ft/s²",
);

const SHEET_SPEED = formula(
  "SHEET_SPEED",
  "Speed of a sheet of water of a given thickness",
  { flow, width: length, thickness: smallLength },
  speed,
  "flow/(width*thickness)",
  "continuity",
);

const THROW = formula(
  "THROW",
  "How far a sheet that leaves level at a speed has come forward after a drop: v √(2z/g)",
  { speed, drop: length },
  length,
  "speed*SQRT(2*drop/32.174[ft/s²])",
  "free fall; g 32.174 ft/s²",
);

const WATER_IN_AIR = formula(
  "WATER_IN_AIR",
  "Water on its way down a drop: flow times the time of fall",
  { flow, drop: length },
  waterVolume,
  "flow*SQRT(2*drop/32.174[ft/s²])",
  "free fall; g 32.174 ft/s²",
);

const SHARE_OF_LEVEL = formula(
  "SHARE_OF_LEVEL",
  "A lip's share of what the chosen shares leave of its level's flow, in proportion to design flow",
  { sharing: flow, level: count, flows: columnOf(flow), chosen: columnOf(percent), levels: columnOf(count) },
  percent,
  "IF(sharing>0,MAX(0,1-SUM_WHERE(chosen,levels,level))*sharing/SUM_WHERE(flows,levels,level),0)",
  "definition",
);

/** Lips: depth, sheet, throw. */
export const weirFormulas = [
  WEIR_FLOW,
  WEIR_HEAD,
  NARROWED_WIDTH,
  CRITICAL_DEPTH,
  SHEET_SPEED,
  THROW,
  WATER_IN_AIR,
  SHARE_OF_LEVEL,
];
