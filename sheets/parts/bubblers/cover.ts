import {
  area,
  calc,
  decide,
  density,
  lines,
  office,
  percent,
  smallLength,
  spaceVolume,
  tons,
} from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { practice } from "../rates.js";
import { truckPayload } from "../truck.js";

/** Stone around the crates, and what people see of the basin: the cobble over it. */
export const cover = lines("In short", {
  stone_tons: calc(tons, "cover_tons+fill_tons", "Cobble and fill", { strong: true }),
  cover_tons: calc(tons, "STONE_TONS(cover_volume,loose_voids,loose_density)", "Cobble over the basin"),
  fill_tons: calc(tons, "STONE_TONS(basin_stone_volume,loose_voids,loose_density)", "Fill around crates"),
  cover_depth: decide(smallLength, "Depth of cobble over rim", { section: "Stone", default: 3, least: 0, most: 24 }),
  cover_beyond: decide(smallLength, "Cobble beyond the basin", {
    section: "Stone",
    default: 6,
    least: 0,
    most: 60,
    note: "On each side, so that the edge of the liner is hidden.",
  }),
  cover_area: calc(
    area,
    "MAX(0[ft²],(basin_length+2*cover_beyond)*(basin_width+2*cover_beyond)-SUM(bubblers.foot))",
    "Ground under cobble",
    { note: "Less where the stones stand." },
  ),
  cover_volume: calc(spaceVolume, "cover_area*cover_depth", "Cobble, as laid", { working: true }),
  loose_voids: office(percent, "Voids of cobble and fill", {
    default: 0.4,
    least: 0,
    most: 0.6,
    decimals: 0,
    source: "clean open-graded stone: stormwater manuals",
  }),
  loose_density: office(density, "Solid density, cobble and fill", {
    default: 165,
    least: 90,
    most: 210,
    source: practice,
  }),
  cover_code: itemCode("Item code, cobble", { default: "stone-cobble" }),
  fill_code: itemCode("Item code, fill around crates", { default: "stone-basin" }),
  truck_payload: truckPayload,
});
