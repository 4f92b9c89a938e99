import {
  calc,
  check,
  count,
  flow,
  input,
  length,
  percent,
  precise,
  smallLength,
  speed,
  table,
  text,
} from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";

const coefficient = "PICK(lip_types.coefficient,lip_types.name,lip_type)";
const drawnIn = (from: string) =>
  `WEIR_HEAD(actual_flow,NARROWED_WIDTH(width,open_ends,${from}),lip_coefficient)`;

/** One row for each lip, from the top down. */
export const fallsTable = table(
  "falls",
  "Falls, from the top down",
  {
    rows: capacity.falls,
    opening: 1,
    filled: "width>0",
    note: "Lips of one level stand side by side and share its flow. The drop runs from the water above to the water below.",
  },
  {
    name: input(text, "Fall", { default: "Fall" }),
    level: input(count, "Level (1 is the top)", {
      default: 1,
      least: 1,
      most: capacity.falls,
      whole: true,
    }),
    width: input(length, "Width of lip", { least: 0.1, most: 60 }),
    drop: input(length, "Drop", { least: 0, most: 30 }),
    look: input(text, "Look", { default: "normal sheet", choices: "looks.name" }),
    lip_type: input(text, "Kind of lip", { default: "flat stone", choices: "lip_types.name" }),
    open_ends: input(count, "Open ends of lip", {
      default: 0,
      least: 0,
      most: 2,
      whole: true,
      note: "Ends of the lip at which the sheet draws in, since no stone bounds it.",
    }),
    override_share: input(percent, "Share of the level's flow", {
      optional: true,
      least: 0,
      most: 1,
      note: "Blank: in proportion to the flow wanted.",
    }),
    drop_counted: calc(length, "drop", "Drop, as counted"),
    design_flow: calc(flow, "width*PICK(looks.per_width,looks.name,look)", "Design flow"),
    sharing: calc(
      flow,
      "IF(ISBLANK(override_share),design_flow,0)",
      "Flow wanted, where no share is chosen",
    ),
    share: calc(
      percent,
      "IF(ISBLANK(override_share),IF(sharing>0,MAX(0,1-SUM_WHERE(falls.override_share,falls.level,level))*sharing/SUM_WHERE(falls.sharing,falls.level,level),0),override_share)",
      "Share",
    ),
    actual_flow: calc(flow, "share*PICK(levels.actual_flow,levels.number,level)", "Actual flow", {
      strong: true,
    }),
    lip_coefficient: calc(precise, coefficient, "Lip coefficient"),
    depth_full: calc(
      smallLength,
      "WEIR_HEAD(actual_flow,width,lip_coefficient)",
      "Depth over the lip, full width",
    ),
    depth_pass: calc(smallLength, drawnIn("depth_full"), "Depth, drawn in: first pass"),
    lip_depth: calc(smallLength, drawnIn("depth_pass"), "Depth over the lip", { strong: true }),
    lips_beside: calc(
      count,
      "SUMPRODUCT((falls.level=level)*(falls.width>0))-1",
      "Other lips of its level",
    ),
    lip_raised: calc(
      smallLength,
      "LARGEST_WHERE(falls.lip_depth,falls.level,level)-lip_depth",
      "Lip above the lowest of its level",
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
      "sheet_thickness_ratio*CRITICAL_DEPTH(actual_flow,width)",
      "Sheet thickness at lip",
    ),
    sheet_speed: calc(
      speed,
      "IF(sheet_thickness>0,SHEET_SPEED(actual_flow,width,sheet_thickness),0)",
      "Sheet speed at lip",
    ),
    throw: calc(length, "THROW(sheet_speed,drop)", "Throw", { strong: true }),
    water_in_air: calc(waterVolume, "WATER_IN_AIR(actual_flow,drop)", "Water in the air", {
      decimals: 1,
    }),
    name_unique: check(
      "SUMPRODUCT((falls.name=name)*(falls.width>0))<2",
      "{name} stands in more than one row of this table: give each row a name of its own, since the crew goes by it.",
      { label: "Name of its own" },
    ),
    has_drop: check(
      "drop>0",
      "{name} has no drop, so it is no fall: measure from the water above to the water below.",
      { label: "Has a drop", level: "look" },
    ),
    flow_enough: check(
      "actual_flow>=least_flow_share*design_flow",
      "{name} gets {actual_flow} where {design_flow} was wanted, under {least_flow_share} of it: bring more water in at or above its level, change the shares, or choose a lighter look.",
      { label: "Not starved" },
    ),
    flow_not_excessive: check(
      "actual_flow<=most_flow_share*design_flow",
      "{name} gets {actual_flow} where {design_flow} was wanted, over {most_flow_share} of it: it will look heavier than planned; widen the lip, change the shares, or let an outlet enter lower down.",
      { label: "Not flooded", level: "look" },
    ),
    shares_close: check(
      "ABS(SUM_WHERE(falls.share,falls.level,level)-1)<0.0005",
      "{name}: the shares of level {level} do not make 100 %: change them, or leave one blank.",
      { label: "Shares make 100 %" },
    ),
    lip_wide_enough: check(
      "width>=3*lip_depth",
      "{name}: the lip is {width} wide, less than three times the depth over it ({lip_depth}): the depth is only a guess, widen the lip.",
      { label: "Lip formula holds", level: "look" },
    ),
  },
);
