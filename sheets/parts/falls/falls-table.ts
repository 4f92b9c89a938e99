import {
  calc,
  check,
  count,
  decide,
  flow,
  length,
  percent,
  precise,
  smallLength,
  speed,
  table,
  text,
  walk,
} from "../../../engine/template/index.js";
import { looks } from "../../tables/lips.js";
import { plusInches } from "../../vocabulary/feet-and-inches.js";
import { oneOf } from "../../vocabulary/one-of.js";
import { flowPerWidth, waterVolume } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";
import { nameUnique } from "../name-unique.js";

const coefficient = "PICK(lip_types.coefficient,lip_types.name,lip_type)";
const drawnIn = (from: string) =>
  `WEIR_HEAD(actual_flow,NARROWED_WIDTH(width_counted,open_ends,${from}),lip_coefficient)`;

/** One row for each lip, from the top down. */
export const fallsTable = table(
  "falls",
  "Falls, from the top down",
  {
    rows: capacity.falls,
    opening: 1,
    filled: "AND(width+width_plus>0,level>0,LEN(look)>0,LEN(lip_type)>0)",
    note: `Lips of one level stand side by side and share its flow. The drop runs from upper to lower water. Look: ${oneOf(looks.data)}`,
  },
  {
    name: walk(text, "Fall", { default: "Fall" }),
    level: walk(count, "Level (1 is the top)", {
      again: true,
      default: 1,
      least: 1,
      most: capacity.falls,
      whole: true,
    }),
    width: walk(length, "Lip width", { least: 0, most: 60, note: "Of a pot: across its rim; of a bowl: its spout." }),
    width_plus: plusInches("Lip width"),
    drop: walk(length, "Drop", {
      optional: true,
      least: 0,
      most: 30,
      note: "Blank: from the rod readings of its level.",
    }),
    drop_plus: plusInches("Drop"),
    look: walk(text, "Look", { again: true, default: "normal sheet", choices: "looks.name" }),
    lip_type: decide(text, "Lip type", { default: "flat stone", choices: "lip_types.name" }),
    open_ends: decide(count, "Open ends of lip", {
      default: 0,
      least: 0,
      most: 2,
      whole: true,
      note: "Ends where no stone bounds the sheet, so that it draws in.",
    }),
    override_share: decide(percent, "Override share of flow", {
      optional: true,
      least: 0,
      most: 1,
      note: "Blank: in proportion to design flow.",
    }),
    lip_across: calc(length, "width+width_plus", "Width given", { working: true }),
    width_counted: calc(length, "lip_across*PICK(lip_types.around,lip_types.name,lip_type)", "Width counted"),
    design_flow: calc(flow, "width_counted*PICK(looks.per_width,looks.name,look)", "Design flow", {
      note: "Width counted, times the flow per width that sheet Office rules gives the look.",
    }),
    lip_built: calc(length, "width_counted*PICK(lip_types.built,lip_types.name,lip_type)", "Lip to build", {
      note: "None where a pot brings its own rim.",
    }),
    drop_counted: calc(
      length,
      "IF(AND(ISBLANK(drop),ISBLANK(drop_plus)),PICK(elevations.rod_drop,elevations.level,level),drop+drop_plus)",
      "Drop counted",
    ),
    sharing: calc(flow, "IF(ISBLANK(override_share),design_flow,0)", "Design flow without override"),
    share: calc(
      percent,
      "IF(ISBLANK(override_share),SHARE_OF_LEVEL(sharing,level,falls.sharing,falls.override_share,falls.level),override_share)",
      "Share",
    ),
    actual_flow: calc(flow, "share*PICK(levels.actual_flow,levels.number,level)", "Actual flow", {
      strong: true,
    }),
    flow_per_width: calc(flowPerWidth, "actual_flow/width_counted", "Flow per width", {
      strong: true,
      note: "Of the actual flow, to be held against that of the look.",
    }),
    lip_coefficient: calc(precise, coefficient, "Lip coefficient"),
    depth_pass: calc(smallLength, drawnIn("WEIR_HEAD(actual_flow,width_counted,lip_coefficient)"), "Depth, first pass"),
    lip_depth: calc(smallLength, drawnIn("depth_pass"), "Depth over lip", { strong: true }),
    lips_beside: calc(count, "SUMPRODUCT((falls.level=level)*(falls.width_counted>0))-1", "Other lips of level"),
    lip_raised: calc(
      smallLength,
      "LARGEST_WHERE(falls.lip_depth,falls.level,level)-lip_depth",
      "Lip above lowest of level",
      {
        note: "Lips of one level draw from one level of water: the lip with the least water over it stands highest, so that the shares come out.",
      },
    ),
    lip_above_rim: calc(
      length,
      "PICK(levels.height,levels.number,level)-lip_depth-rim_above_water",
      "Lip above basin's rim",
      {
        note: "To set the lip out from one benchmark: the water of its level, less the water over the lip, from the rim up.",
      },
    ),
    sheet_thickness: calc(
      smallLength,
      "sheet_thickness_ratio*CRITICAL_DEPTH(actual_flow,width_counted)",
      "Sheet thickness at lip",
    ),
    sheet_speed: calc(
      speed,
      "IF(sheet_thickness>0,SHEET_SPEED(actual_flow,width_counted,sheet_thickness),0)",
      "Sheet speed at lip",
    ),
    throw: calc(length, "THROW(sheet_speed,drop_counted)", "Throw", { strong: true }),
    water_in_air: calc(waterVolume, "WATER_IN_AIR(actual_flow,drop_counted)", "Water in the air", {
      decimals: 1,
    }),
    name_unique: nameUnique("falls", "falls.width_counted>0"),
    drop_given: check(
      "OR(NOT(ISBLANK(drop)),NOT(ISBLANK(drop_plus)),drop_counted>0)",
      "{name}: neither its drop nor the rod readings of level {level|0} are given. Enter one of them on sheet Walk.",
      { label: "Drop not measured", toldAt: { input: "drop", says: "Drop, or its rod readings, needed" } },
    ),
    has_drop: check(
      "OR(NOT(drop_given),drop_counted>0)",
      "{name} has no drop, so it is no fall: enter the height from upper to lower water on sheet Walk.",
      { label: "Drop missing", level: "look" },
    ),
    flow_enough: check(
      "actual_flow>=least_flow_share*design_flow",
      "{name} gets {actual_flow}, under {least_flow_share|0} of its design flow {design_flow}: bring in more water at its level or choose a lighter look.",
      { label: "Flow too low" },
    ),
    flow_not_excessive: check(
      "actual_flow<=most_flow_share*design_flow",
      "{name} gets {actual_flow}, over {most_flow_share|0} of its design flow {design_flow}: widen the lip or bring the water in lower down.",
      { label: "Flow too high", level: "look" },
    ),
    shares_close: check(
      "ABS(SUM_WHERE(falls.share,falls.level,level)-1)<0.0005",
      "{name}: the shares of level {level} do not add up to 100 %. Leave one override share blank on sheet Decisions.",
      { label: "Shares not 100 %" },
    ),
    lip_wide_enough: check(
      "width_counted>=3*lip_depth",
      "{name}: its lip is {width_counted} wide, less than three times the depth over it, {lip_depth}, so the depth is a guess. Widen the lip.",
      { label: "Lip narrow for formula", level: "look" },
    ),
  },
);
