import {
  area,
  calc,
  check,
  count,
  decide,
  length,
  percent,
  smallLength,
  table,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import { plusInches } from "../../vocabulary/feet-and-inches.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";
import { nameUnique } from "../name-unique.js";

/** Standing water behind a lip: it is there at rest too, and rises while the water runs. */
export const poolsTable = table(
  "pools",
  "Pools behind lips",
  { section: "Pools", rows: capacity.pools, filled: "length+length_plus>0" },
  {
    name: walk(text, "Pool", { default: "Pool" }),
    before_level: walk(count, "Behind lip of level", {
      default: 1,
      least: 1,
      most: capacity.falls,
      whole: true,
    }),
    length: walk(length, "Length", { least: 0.5, most: 200 }),
    length_plus: plusInches("Length"),
    width: walk(length, "Width", { default: 4, least: 0.5, most: 200 }),
    width_plus: plusInches("Width"),
    depth: walk(length, "Greatest depth below lip", { default: 1, least: 0, most: 10 }),
    depth_plus: plusInches("Greatest depth"),
    filled_share: decide(percent, "Surface, share of box", {
      default: 0.8,
      least: 0.3,
      most: 1,
      source: "an oval fills π/4 of its box",
    }),
    mean_depth: decide(percent, "Mean depth over greatest", {
      default: 0.6,
      least: 0.2,
      most: 1,
      source: "common practice, no source",
    }),
    barrier_planned: decide(yesno, "Barrier agreed with the authority", { default: false }),
    length_counted: calc(length, "length+length_plus", "Length counted"),
    width_counted: calc(length, "width+width_plus", "Width counted"),
    depth_counted: calc(length, "depth+depth_plus", "Depth counted"),
    surface: calc(area, "length_counted*width_counted*filled_share", "Water surface"),
    water_standing: calc(waterVolume, "surface*depth_counted*mean_depth", "Standing water"),
    rise: calc(smallLength, "LARGEST_WHERE(falls.lip_depth,falls.level,before_level)", "Rise while running"),
    water_held: calc(waterVolume, "surface*rise", "Water held while running"),
    water_depth: calc(length, "depth_counted+rise", "Greatest depth while running"),
    name_unique: nameUnique("pools", "pools.length_counted>0"),
    level_exists: check(
      "LISTED(falls.level,before_level)",
      "{name} lies behind level {before_level|0}, which has no fall: enter a level with a fall on sheet Walk.",
      { label: "Level without a fall" },
    ),
    fenced: check(
      "OR(ROUND(water_depth-barrier_depth,9)<=0,barrier_planned)",
      "{name} holds water {water_depth} deep; over {barrier_depth} many codes want a {barrier_height} barrier. Ask the authority, plan it, and say so on sheet Decisions.",
      { label: "Pool without barrier" },
    ),
  },
);
