import {
  calc,
  decide,
  length,
  lines,
  number,
  office,
  smallLength,
  text,
  walk,
} from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { soilVolume } from "../../vocabulary/quantities.js";

export const basinDig = lines("Basin excavation", {
  working_room: office(length, "Working room", {
    default: 0,
    least: 0,
    most: 6,
    note: "0: the liner lies on the cut, and nothing is dug to be filled again.",
    source: "common practice, no source",
  }),
  basin_bedding: office(smallLength, "Bedding under liner", {
    default: 2,
    least: 0,
    most: 12,
    source: "common practice, no source",
  }),
  bedding_code: itemCode("Item code, bedding", { default: "sand-bedding" }),
  dig_slope: decide(number, "Side slope, horizontal to 1", {
    default: 0,
    least: 0,
    most: 4,
    note: "The sheet Earthwork says what slope the safety standard asks for at this depth.",
  }),
  ground_over_rim: walk(length, "Ground over rim, uphill side", {
    section: "Basin place",
    default: 0,
    least: 0,
    most: 10,
    note: "On a slope: from the rim up to the ground at the uphill edge of the dig. That side counts for protection.",
  }),
  dig_bottom_length: calc(length, "basin_length+2*working_room", "Dig length, bottom"),
  dig_bottom_width: calc(length, "basin_width+2*working_room", "Dig width, bottom"),
  dig_depth: calc(length, "basin_depth+basin_bedding", "Dig depth", { strong: true }),
  dig_deepest: calc(length, "dig_depth+ground_over_rim", "Dig depth, uphill side", { working: true }),
  dig_top_length: calc(length, "dig_bottom_length+2*dig_slope*dig_depth", "Dig length, top"),
  dig_top_width: calc(length, "dig_bottom_width+2*dig_slope*dig_depth", "Dig width, top"),
  basin_dig: calc(
    soilVolume,
    "PRISMOID(dig_bottom_length,dig_bottom_width,dig_depth,dig_slope)",
    "Basin dig, in place",
    { strong: true },
  ),
  basin_bank_cut: calc(
    soilVolume,
    "PRISMOID(dig_top_length,dig_top_width,ground_over_rim,dig_slope)/2",
    "Cut into slope",
    { working: true, note: "A wedge: nothing at the downhill side. It is not filled again." },
  ),
  basin_top_said: calc(
    text,
    '~{IF(dig_slope>0," at the bottom, "&dig_top_length_said&" by "&dig_top_width_said&" at the top","")}',
    "Dig at top, in words",
    { working: true },
  ),
  dig_top_length_said: calc(text, "~{dig_top_length|up}", "Top length, in words", {
    reader: "crew",
    working: true,
  }),
  dig_top_width_said: calc(text, "~{dig_top_width|up}", "Top width, in words", {
    reader: "crew",
    working: true,
  }),
  bedding_volume: calc(soilVolume, "basin_bedding*dig_bottom_length*dig_bottom_width", "Bedding in place", {
    working: true,
  }),
  basin_backfill: calc(
    soilVolume,
    // rounded, so that a liner on the cut leaves nothing and not 1e-15
    "MAX(0,ROUND((basin_dig-basin_plan*basin_depth-bedding_volume)/1[yd³],9))*1[yd³]",
    "Backfill, compacted in place",
    { note: "What working room and sloped sides leave outside the liner." },
  ),
});
