import {
  area,
  calc,
  check,
  count,
  decide,
  length,
  lines,
  office,
  smallLength,
  table,
  text,
  walk,
  weight,
} from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { flowPerWidth, waterVolume } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";
import { practice } from "../rates.js";

/** The falls of its level that are no stone lip: its own rim or spout. */
const ownRim = "(falls.level=level)*(falls.lip_across>0)*(falls.lip_built=0)";

/** Where the site says that a pot stands; the rest of it is decided. */
const onWalk = "Pots";

/** Pots, urns and spillway bowls: a lip that is bought. Its height is the drop of its fall. */
export const potsTable = table(
  "pots",
  "Pots, urns and bowls",
  {
    rows: capacity.pots,
    filled: "level>0",
    note: "Its rim stands as a fall, its lip type chosen on sheet Decisions: across the rim or spout as its width, its height as its drop. The first line of that level fills it.",
  },
  {
    name: walk(text, "Pot", { section: onWalk }),
    level: walk(count, "Level of its rim", { section: onWalk, least: 1, most: capacity.falls, whole: true }),
    across: decide(length, "Across inside", { default: 1.5, least: 0.25, most: 20 }),
    water_depth: decide(smallLength, "Depth of water inside", { default: 18, least: 1, most: 120 }),
    empty: decide(weight, "Weight empty", { default: 150, least: 1, most: 20000 }),
    code: itemCode("Item code", { asked: "decision", default: "pot" }),
    fitting: decide(text, "Fitting", {
      default: "drilled bottom",
      choices: ["drilled bottom", "side fitting", "over the rim"],
    }),
    base: decide(text, "Base", {
      default: "compacted gravel",
      choices: ["compacted gravel", "concrete pad", "stone slab"],
    }),
    rim: calc(length, `SUMPRODUCT(${ownRim}*falls.width_counted)`, "Rim that overflows"),
    weighs: calc(weight, "empty", "Weight counted"),
    surface: calc(area, "0.7854*across^2", "Water surface", { decimals: 1 }),
    deep: calc(smallLength, "water_depth", "Depth counted"),
    water: calc(waterVolume, "surface*water_depth", "Water held", { note: "As if its sides were upright." }),
    full: calc(weight, "empty+water*62.4[lb/ft³]", "Weight full", { note: "What its base carries." }),
    rim_flow: calc(flowPerWidth, `IF(rim>0,SUMPRODUCT(${ownRim}*falls.actual_flow)/rim,0)`, "Flow over rim"),
    has_rim: check(
      "rim>0",
      "{name}: no fall of level {level|0} is a pot rim or spillway bowl. Choose that falls.lip_type on sheet Decisions.",
      { label: "Pot without a rim" },
    ),
    film_whole: check(
      "OR(rim<=0,ROUND(rim_flow/film_least,6)>=1)",
      "{name}: {rim_flow} over its rim; under {film_least} it breaks into streaks. Choose a fuller look in falls on sheet Walk.",
      { label: "Rim runs in streaks", level: "look" },
    ),
  },
);

export const potLines = lines("Pots", {
  film_least: office(flowPerWidth, "Least flow over a rim", { default: 10, least: 1, most: 200, source: practice }),
  pots_set: calc(count, "SUMPRODUCT((pots.rim>0)*1)", "Pots to set", { working: true }),
  pots_fitted: calc(count, 'SUMPRODUCT((pots.rim>0)*(pots.fitting<>"over the rim"))', "Pots with a fitting", {
    working: true,
  }),
  heaviest_pot: calc(weight, "MAX(pots.weighs)", "Heaviest pot, empty", { working: true }),
});
