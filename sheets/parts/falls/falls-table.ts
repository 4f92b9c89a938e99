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
  waterVolume,
} from "../../../engine/template/index.js";

const coefficient = "PICK(lip_kinds.coefficient,lip_kinds.name,lip_kind)";
const drawnIn = (from: string) =>
  `WEIR_HEAD(flow_arriving,NARROWED_WIDTH(width,ends,${from}),lip_coefficient)`;

/** One row for each lip, from the top down. */
export const fallsTable = table(
  "falls",
  "Falls, from the top down",
  {
    rows: 12,
    opening: 1,
    filled: "width>0",
    note: "Lips of one step stand side by side and share its flow. The drop runs from the water above to the water below.",
  },
  {
    name: input(text, "Fall", { default: "Fall" }),
    step: input(count, "Step, 1 is the top", { default: 1, least: 1, most: 12, whole: true }),
    width: input(length, "Width of lip", { least: 0.1, most: 60 }),
    drop: input(length, "Drop", { least: 0, most: 30 }),
    look: input(text, "Look", { default: "ordinary sheet", choices: "looks.name" }),
    lip_kind: input(text, "Kind of lip", { default: "flat stone", choices: "lip_kinds.name" }),
    ends: input(count, "Free ends", {
      default: 0,
      least: 0,
      most: 2,
      whole: true,
      note: "Ends of the lip at which the sheet draws in, since no stone bounds it.",
    }),
    share_chosen: input(percent, "Share of the step's flow", {
      optional: true,
      least: 0,
      most: 1,
      note: "Blank: in proportion to the flow wanted.",
    }),
    drop_counted: calc(length, "drop", "Drop, as counted"),
    flow_wanted: calc(flow, "width*PICK(looks.per_width,looks.name,look)", "Flow wanted"),
    sharing: calc(
      flow,
      "IF(ISBLANK(share_chosen),flow_wanted,0)",
      "Flow wanted, where no share is chosen",
    ),
    share: calc(
      percent,
      "IF(ISBLANK(share_chosen),IF(sharing>0,MAX(0,1-SUM_WHERE(falls.share_chosen,falls.step,step))*sharing/SUM_WHERE(falls.sharing,falls.step,step),0),share_chosen)",
      "Share",
    ),
    flow_arriving: calc(
      flow,
      "share*PICK(steps.flow_as_set,steps.number,step)",
      "Flow arriving, as set",
      { strong: true },
    ),
    lip_coefficient: calc(precise, coefficient, "Lip coefficient"),
    depth_full: calc(
      smallLength,
      "WEIR_HEAD(flow_arriving,width,lip_coefficient)",
      "Depth over the lip, full width",
    ),
    depth_pass: calc(smallLength, drawnIn("depth_full"), "Depth, drawn in: first pass"),
    lip_depth: calc(smallLength, drawnIn("depth_pass"), "Depth over the lip", { strong: true }),
    lips_beside: calc(
      count,
      "SUMPRODUCT((falls.step=step)*(falls.width>0))-1",
      "Other lips of its step",
    ),
    lip_raised: calc(
      smallLength,
      "LARGEST_WHERE(falls.lip_depth,falls.step,step)-lip_depth",
      "Lip above the lowest of its step",
      {
        note: "Lips of one step draw from one level of water: the lip with the least water over it stands highest, so that the shares come out.",
      },
    ),
    brink: calc(
      smallLength,
      "brink_ratio*CRITICAL_DEPTH(flow_arriving,width)",
      "Thickness at the brink",
    ),
    brink_speed: calc(
      speed,
      "IF(brink>0,SHEET_SPEED(flow_arriving,width,brink),0)",
      "Speed at the brink",
    ),
    leap: calc(length, "LEAP(brink_speed,drop)", "Leap", { strong: true }),
    water_in_air: calc(waterVolume, "WATER_IN_AIR(flow_arriving,drop)", "Water in the air", {
      decimals: 1,
    }),
    name_alone: check(
      "SUMPRODUCT((falls.name=name)*(falls.width>0))<2",
      "{name} stands in more than one row of this table: give each row a name of its own, since the crew goes by it.",
      { label: "Name of its own" },
    ),
    has_drop: check(
      "drop>0",
      "{name} has no drop, so it is no fall: measure from the water above to the water below.",
      { label: "Has a drop", level: "look" },
    ),
    not_starved: check(
      "flow_arriving>=least_of_wanted*flow_wanted",
      "{name} gets {flow_arriving} where {flow_wanted} was wanted, under {least_of_wanted} of it: bring more water in at or above its step, change the shares, or choose a lighter look.",
      { label: "Not starved" },
    ),
    not_flooded: check(
      "flow_arriving<=most_of_wanted*flow_wanted",
      "{name} gets {flow_arriving} where {flow_wanted} was wanted, over {most_of_wanted} of it: it will look heavier than planned; widen the lip, change the shares, or let an outlet enter lower down.",
      { label: "Not flooded", level: "look" },
    ),
    shares_close: check(
      "ABS(SUM_WHERE(falls.share,falls.step,step)-1)<0.0005",
      "{name}: the shares of step {step} do not make 100 %: change them, or leave one blank.",
      { label: "Shares make 100 %" },
    ),
    lip_wide_enough: check(
      "width>=3*lip_depth",
      "{name}: the lip is {width} wide, less than three times the depth over it ({lip_depth}): the depth is only a guess, widen the lip.",
      { label: "Lip formula holds", level: "look" },
    ),
  },
);
