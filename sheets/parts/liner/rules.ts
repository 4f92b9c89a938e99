import { areaWeight, check, count, decide, length, lines, office, percent } from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { capacity } from "../capacity.js";
import type { Lined } from "./lined.js";

const practice = "common practice, no source";

/** How a fall's liner laps over that below it. */
const ofFalls = {
  fall_overlap: office(length, "Overlap at a fall", {
    note: "How far the upper sheet laps over the lower one.",
    default: 1,
    least: 0.5,
    most: 6,
    source: "University of Minnesota SULIS: 1 ft; 6 in at least is common practice",
  }),
  splash_margin: office(length, "Splash margin", {
    note: "How far water splashes beyond the landing of a fall.",
    default: 1,
    least: 0,
    most: 10,
    source: practice,
  }),
};

export const linerRules = (lined: Lined) =>
  lines("Sizing and cutting rules", {
    liner_code: itemCode("Liner item code", { default: "liner-45mil" }),
    underlayment_code: itemCode("Underlayment item code", { default: "underlayment" }),
    seam_code: itemCode("Seam tape item code", { default: "seam-tape" }),
    edge_overlap: office(length, "Edge overlap", {
      note: "Liner left over at each edge.",
      default: 0.5,
      least: 0,
      most: 5,
      source: "University of Minnesota SULIS: 6 in on each side",
    }),
    ...(lined === "course" && ofFalls),
    seam_lap: office(length, "Lap of a seam", { default: 0.5, least: 0.1, most: 2, source: practice }),
    seam_worth: office(length, "Liner width worth a seam", {
      default: 2,
      least: 0,
      most: 20,
      note: "A seam counts as much as liner of its length and this width; 0 buys the least liner.",
      source: practice,
    }),
    one_roll: decide(count, "Roll to cut from", {
      note: "Row of the stocked rolls; 0 takes the best for each piece.",
      default: 0,
      least: 0,
      most: capacity.rolls,
      whole: true,
    }),
    length_step: office(length, "Length step of cut liner", {
      note: "Liner cut to length is sold in steps of this.",
      default: 1,
      least: 0.01,
      most: 50,
    }),
    underlayment_sides: office(count, "Sides of liner underlaid", {
      default: 1,
      least: 0,
      most: 2,
      whole: true,
      note: "2 where stone lies on the liner.",
    }),
    underlayment_laps: office(percent, "Underlayment waste and laps", {
      default: 0.1,
      least: 0,
      most: 1,
      decimals: 0,
      source: practice,
    }),
    liner_area_weight: office(areaWeight, "Weight of the liner", {
      default: 0.29,
      least: 0.01,
      most: 2,
      source: "property sheet of a 45 mil EPDM sheet: 0.29 lb/ft², within 10%",
    }),
    roll_chosen: check(
      "IF(one_roll=0,SUMPRODUCT((liner_rolls.width>0)*1)>0,INDEX(liner_rolls.width,MAX(1,one_roll))>seam_lap)",
      "Roll {one_roll} is empty, or all are. Enter a stocked roll wider than the seam lap of {seam_lap}, in liner_rolls on sheet Office rules.",
      { label: "No roll to cut from" },
    ),
  });
