import {
  calc,
  check,
  decide,
  length,
  lines,
  office,
  smallLength,
  spaceVolume,
  text,
  tons,
} from "../../../engine/template/index.js";
import { stoneWork } from "../../tables/stone.js";
import { massPerLength } from "../../vocabulary/quantities.js";
import { practice } from "../rates.js";
import { truckPayload } from "../truck.js";

const ofWork = (work: string) => `SUM_WHERE(stone_places.tons,stone_places.work,"${work}")`;

export const stoneTotals = lines("In short", {
  stone_tons: calc(tons, "SUM(stone_places.tons)", "Total stone", { strong: true }),
  built_stone: calc(tons, `${ofWork(stoneWork.lips)}+${ofWork(stoneWork.faces)}`, "Stone built into falls"),
  placed_stone: calc(tons, ofWork(stoneWork.placed), "Boulders placed"),
  rolled_stone: calc(
    tons,
    `IF(by_hand,SUMPRODUCT((stone_places.work="${stoneWork.placed}")*(stone_places.heaviest>hand_lift)*stone_places.tons),0)`,
    "Boulders rolled by hand",
    { zero: "0", note: "Too heavy for the crew to carry: moved on rollers and bars." },
  ),
  laid_stone: calc(tons, ofWork(stoneWork.laid), "Cobble barrowed and laid"),
  raked_stone: calc(tons, ofWork(stoneWork.raked), "Gravel dumped and raked"),
  // joined to a text: a blank one is "" then, and finds no blank row of the kinds
  lip_stone_kind: calc(text, 'PICK_OR(stone_places.stone,stone_places.covers,"lips","")&""', "Kind of lip stones", {
    working: true,
  }),
  lip_stone_longest: calc(
    length,
    "IF(LEN(lip_stone_kind)>0,PICK(stones.stone_length,stones.name,lip_stone_kind),0[ft])",
    "Longest lip stone",
    { working: true, note: "A wider lip is made of several.", zero: "not known" },
  ),
  lip_thickness: calc(
    smallLength,
    'PICK_OR(stone_places.thickness,stone_places.covers,"lips",0[ft])',
    "Thickness of lip stones",
    { working: true },
  ),
  stone_per_foot: calc(
    massPerLength,
    'IF(stream_length>0,(stone_tons-SUM_WHERE(stone_places.tons,stone_places.covers,"basin fill"))/stream_length,0)',
    "Stone per ‹foot|meter›",
    { note: "Of stream and pools; the basin's stone left out." },
  ),
  stone_per_foot_least: office(massPerLength, "Least stone per ‹foot|meter›", {
    default: 0.1,
    least: 0,
    most: 5,
    source: practice,
  }),
  stone_per_foot_most: office(massPerLength, "Most stone per ‹foot|meter›", {
    default: 1,
    least: 0,
    most: 20,
    source: practice,
  }),
  stone_band: calc(text, "~{stone_per_foot_least|2|bare} to {stone_per_foot_most|2}", "Band of stone per ‹foot|meter›"),
  stone_in_band: check(
    "OR(stream_length<=0,AND(stone_per_foot>=stone_per_foot_least,stone_per_foot<=stone_per_foot_most))",
    "Stone comes to {stone_per_foot|2}, outside {stone_per_foot_least|2|bare} to {stone_per_foot_most|2}. Look at courses and shares in stone_places on sheet Decisions.",
    { label: "Stone per length unusual", level: "look" },
  ),
  faces_have_stone: check(
    'OR(fall_face<=0,SUM_WHERE(stone_places.share,stone_places.covers,"fall faces")>0)',
    "No stone covers fall faces, so only lips have stone. Add a place that covers fall faces, in stone_places on sheet Decisions.",
    { label: "Fall faces without stone", level: "look" },
  ),
  pool_bed: decide(text, "Bed of the pools", { default: "gravel", choices: "beds.name" }),
  mortar_depth: office(smallLength, "Mortar bed thickness", {
    default: 2,
    least: 0,
    most: 12,
    source: "common practice, no source",
  }),
  bed_mortar: calc(
    spaceVolume,
    'SUMPRODUCT((runs.bed = "troweled mortar") * runs.length_counted * runs.width_counted) * mortar_depth + SUM(stone_places.mortar)',
    "Mortar of the beds",
    { working: true },
  ),
  truck_payload: truckPayload,
});
