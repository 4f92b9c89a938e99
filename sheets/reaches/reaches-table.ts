import {
  area,
  calc,
  check,
  count,
  flow,
  input,
  length,
  number,
  precise,
  smallLength,
  speed,
  table,
  text,
  waterVolume,
} from "../../engine/template/index.js";

const pass = (from: string, label: string) =>
  calc(smallLength, `IF(${from}>0,DEPTH_PASS(${from},section,width,side),0)`, label);

/** One row for each stretch of stream. */
export const reachesTable = table(
  "reaches",
  "Reaches: running stretches between falls",
  { rows: 12, opening: 1, filled: "length>0" },
  {
    name: input(text, "Reach", { default: "Reach" }),
    after_step: input(count, "After step", { default: 1, least: 1, most: 12, whole: true }),
    length: input(length, "Length", { least: 0.5, most: 500 }),
    width: input(length, "Width of bed", { default: 3, least: 0.25, most: 60 }),
    fall: input(length, "Fall along it", { default: 0.25, least: 0.01, most: 50 }),
    side: input(number, "Side slope, run over rise", { default: 1, least: 0, most: 6 }),
    bed: input(text, "Bed", { default: "cobble", choices: "beds.name" }),
    bank_height: input(length, "Height of banks", { default: 0.75, least: 0.1, most: 10 }),
    flow: calc(flow, "IFERROR(INDEX(steps.flow_as_set,after_step),0)", "Flow as set"),
    roughness: calc(
      precise,
      "IFERROR(INDEX(beds.roughness,MATCH(bed,beds.name,0)),0.04)",
      "Manning's n",
      { decimals: 3 },
    ),
    slope: calc(precise, "MAX(fall/length,0.0001)", "Slope", { decimals: 4 }),
    section: calc(precise, "MANNING_SECTION(flow,roughness,slope)", "Section asked for"),
    depth_wide: calc(
      smallLength,
      "IF(width>0,WIDE_DEPTH(section,width),0)",
      "Depth, sides left out",
    ),
    depth_first: pass("depth_wide", "Depth, first pass"),
    depth_second: pass("depth_first", "Depth, second pass"),
    depth: { ...pass("depth_second", "Depth of water"), strong: true },
    water_area: calc(area, "CHANNEL_AREA(width,depth,side)", "Cross-section", { decimals: 2 }),
    speed: calc(speed, "IF(water_area>0,flow/water_area,0)", "Speed"),
    froude: calc(
      number,
      "IF(water_area>0,FROUDE(speed,water_area,width+2*side*depth),0)",
      "Froude number",
    ),
    water_held: calc(waterVolume, "water_area*length", "Water held, running"),
    surface: calc(area, "(width+2*side*depth)*length", "Water surface"),
    wetted_bed: calc(area, "(width+2*depth*SQRT(1+side^2))*length", "Bed under water"),
    stone_size: calc(
      smallLength,
      "IFERROR(INDEX(beds.stone_size,MATCH(bed,beds.name,0)),0)",
      "Size of the bed's stone",
    ),
    water_in_bed: calc(
      waterVolume,
      "IF(flow>0,wetted_bed*bed_stone_depth*IFERROR(INDEX(beds.voids,MATCH(bed,beds.name,0)),0),0)",
      "Water between the bed's stone, running",
    ),
    name_alone: check(
      "SUMPRODUCT((reaches.name=name)*(reaches.length>0))<2",
      "{name} stands in more than one row of this table: give each row a name of its own, since the crew goes by it.",
      { label: "Name of its own" },
    ),
    step_exists: check(
      "COUNTIF(falls.step,after_step)>0",
      "{name} follows step {after_step|0}, where there is no fall: choose a step that has one.",
      { label: "Step exists" },
    ),
    banks_hold: check(
      "depth+freeboard<=bank_height",
      "{name} runs {depth} deep; with {freeboard} to spare that passes its banks of {bank_height}: raise the banks or widen the bed.",
      { label: "Banks hold" },
    ),
    depth_found: check(
      "OR(flow<=0,ABS(MANNING_FLOW(depth,width,side,roughness,slope)-flow)<=0.001*flow)",
      "{name}: the depth was not found to a thousandth of the flow: check width, fall and side slope.",
      { label: "Depth found" },
    ),
    covers_stone: check(
      "OR(flow<=0,depth>=stone_size)",
      "{name}: water runs {depth} deep over stone of {stone_size}. Manning's formula does not hold there: expect two to four times that depth, and plan banks and basin for it.",
      { label: "Deeper than its stone", level: "look" },
    ),
    runs_calm: check(
      "froude<0.85",
      "{name} runs at Froude number {froude}. From about 0.85 on the surface stands in waves, from 1 on the water shoots: expect splash and noise; roughen the bed or flatten it, or plan the liner wider.",
      { label: "Runs calm", level: "look" },
    ),
  },
);
