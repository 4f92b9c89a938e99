import {
  calc,
  check,
  decide,
  lines,
  office,
  smallLength,
  spaceVolume,
  text,
  tons,
} from "../../../engine/template/index.js";

export const stoneTotals = lines("In short", {
  stone_tons: calc(tons, "SUM(stones.tons)", "Total stone", { strong: true }),
  faces_have_stone: check(
    'OR(SUMPRODUCT(falls.width_counted, falls.drop_counted) = 0[ft²], SUM_WHERE(stones.share, stones.covers, "fall faces") > 0)',
    "No class of stone covers fall faces, so only lips have stone. Add a class that covers fall faces, in stones on sheet Office rules.",
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
    'SUMPRODUCT((runs.bed = "troweled mortar") * runs.length_counted * runs.width_counted) * mortar_depth + SUM(stones.mortar)',
    "Mortar of the beds",
  ),
  truck_payload: office(tons, "Truck payload", {
    default: 15,
    least: 0.25,
    most: 40,
    note: "What the local hauler may carry on these roads.",
    source: "common practice, no source",
  }),
});
