import {
  area,
  calc,
  check,
  input,
  lines,
  smallLength,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";

/** The design rain on basin and stream, at rest, with the basin full. */
export const designRain = lines("Design rain, with the basin full and the pump at rest", {
  design_rain: input(smallLength, "Rain of the design storm", {
    default: 4,
    least: 0,
    most: 30,
    note: "Look up the site in NOAA Atlas 14; ‹4 in|102 mm› is a placeholder to replace.",
    source: "common practice, no source",
  }),
  storm_is_local: input(yesno, "The design storm is that of the site", { default: false }),
  storm_looked_up: check(
    "storm_is_local",
    "The design storm of {design_rain} is a placeholder until it is looked up for the site: put its rain in, then say yes above.",
    { label: "The design storm is the site's", level: "look" },
  ),
  other_catchment: input(area, "Ground that drains into the stream besides", {
    default: 0,
    least: 0,
    most: 100000,
  }),
  overflow_place: input(text, "Where the overflow goes", { default: "the low side of the basin" }),
  rain_area: calc(
    area,
    "basin_plan + SUMPRODUCT(runs.length, runs.width + 2 * runs.side * runs.bank_height) + SUMPRODUCT(pools.length, pools.width) + other_catchment",
    "Area that catches rain: basin, stream to the top of its banks, ground besides",
  ),
  rain_caught: calc(waterVolume, "rain_area * design_rain", "Rain caught"),
  rain_room: calc(
    waterVolume,
    "HELD_BELOW(basin_depth, crate_top, lower_water_area, upper_water_area) - basin_water_held",
    "Room left up to the rim",
  ),
  rain_overflow: calc(waterVolume, "MAX(0, rain_caught - rain_room)", "Spills over", {
    strong: true,
  }),
  rain_held: check(
    "rain_overflow <= 0",
    "The design rain brings {rain_caught}, and the full basin has room for {rain_room}: {rain_overflow} spill over at {overflow_place}. Lead that water away from buildings and neighbors, or lower the full line.",
    { label: "The basin takes the design rain", level: "look" },
  ),
});
