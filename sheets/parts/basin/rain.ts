import { area, calc, check, lines, office, smallLength, text, walk, yesno } from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { plus } from "../added.js";
import type { Whole } from "../brought.js";

/** The design rain on basin and water course, at rest, with the basin full. */
export const designRain = ({ added, cellsAt }: Pick<Whole, "added" | "cellsAt">) =>
  lines("Design rain, basin full", {
    design_rain: office(smallLength, "Design storm rain", {
      section: "Weather",
      default: 4,
      least: 0,
      most: 30,
      note: "Look up the site in NOAA Atlas 14; ‹4 in|102 mm› is a placeholder to replace.",
      source: "common practice, no source",
    }),
    storm_is_local: office(yesno, "Local design storm entered", { section: "Weather", default: false }),
    other_catchment: walk(area, "Other ground draining in", {
      section: "Overflow place",
      default: 0,
      least: 0,
      most: 100000,
    }),
    overflow_place: walk(text, "Where the overflow goes", {
      section: "Overflow place",
      optional: true,
      note: "Away from buildings and neighbors.",
    }),
    overflow_said: calc(
      text,
      'IF(LEN(overflow_place)>0,overflow_place,"the low side of the basin")',
      "Overflow place in words",
    ),
    ...cellsAt("design rain"),
    rain_area: calc(area, `basin_plan${plus(added("catchment"))}+other_catchment`, "Rain catchment"),
    rain_caught: calc(waterVolume, "rain_area*storm_rain", "Rain caught"),
    rain_room: calc(
      waterVolume,
      "HELD_BELOW(basin_depth,crate_top,lower_water_area,upper_water_area)-basin_water_held",
      "Room up to rim",
    ),
    rain_overflow: calc(waterVolume, "MAX(0,rain_caught-rain_room)", "Overflow", {
      strong: true,
    }),
    rain_held: check(
      "OR(rain_overflow<=0,LEN(overflow_place)>0)",
      "The design rain brings {rain_caught}, the full basin has room for {rain_room}. Enter on sheet Walk where {rain_overflow} may go, as overflow_place.",
      { label: "Overflow without a place", level: "look" },
    ),
  });
