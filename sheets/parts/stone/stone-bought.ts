import {
  calc,
  check,
  input,
  lines,
  smallLength,
  spaceVolume,
  text,
  tons,
} from "../../../engine/template/index.js";

export const stoneTotals = lines("In short", {
  stone_tons: calc(tons, "SUM(stones.tons)", "Stone in all", { strong: true }),
  faces_have_stone: check(
    'OR(SUMPRODUCT(falls.width, falls.drop) = 0[ft²], SUM_WHERE(stones.share, stones.covers, "fall faces") > 0)',
    "There are drops, but no class of stone covers fall faces: add one, or the falls have no stone but their lips.",
    { label: "The faces of the falls have stone", level: "look" },
  ),
  pool_bed: input(text, "Bed of the pools", { default: "gravel", choices: "beds.name" }),
  mortar_depth: input(smallLength, "Thickness of a troweled mortar bed", {
    default: 2,
    least: 0,
    most: 12,
    source: "common practice, no source",
  }),
  bed_mortar: calc(
    spaceVolume,
    'SUMPRODUCT((runs.bed = "troweled mortar") * runs.length * runs.width) * mortar_depth + SUM(stones.mortar)',
    "Mortar of the beds",
  ),
  truck_payload: input(tons, "A truck carries", {
    default: 15,
    least: 0.25,
    most: 40,
    note: "What the local hauler may carry on these roads.",
    source: "common practice, no source",
  }),
});
