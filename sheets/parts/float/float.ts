import { calc, check, decide, length, lines, smallLength } from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";

const heldBelow = (level: string) => `HELD_BELOW(${level},crate_top,lower_water_area,upper_water_area)`;

/** Where the fill float stands while the pump runs: at a stop, what is out of the basin comes back on top of it. */
export const fillFloat = lines("Fill float, pump running", {
  override_float: decide(smallLength, "Override float below rim", {
    optional: true,
    least: 0,
    most: 120,
    note: "The level at which the fill valve shuts. Blank: so that a stop fills the basin to its full line.",
  }),
  float_level: calc(
    length,
    "IF(ISBLANK(override_float),level_running,MAX(0[ft],basin_depth-override_float))",
    "Float over basin bottom",
    { strong: true },
  ),
  float_below_rim: calc(smallLength, "basin_depth - float_level", "Float below rim", {
    strong: true,
    note: "A float at the full line itself would fill the room that is needed at a stop.",
  }),
  float_water: calc(waterVolume, heldBelow("float_level"), "Basin water while running", { working: true }),
  stop_water: calc(waterVolume, "water_into_stream+water_drained_back", "Water back at a stop", { working: true }),
  stop_room: calc(waterVolume, `MAX(0[gal],${heldBelow("basin_depth")}-float_water)`, "Room from float to rim", {
    working: true,
  }),
  stop_spill: calc(waterVolume, "MAX(0[gal],stop_water-stop_room)", "Overflow at a stop", { working: true }),
  float_highest: calc(
    length,
    `LEVEL_OF(MAX(0[gal],${heldBelow("basin_depth")}-stop_water),crate_top,lower_water_area,upper_water_area)`,
    "Highest float without overflow",
    { working: true },
  ),
  float_least_below_rim: calc(smallLength, "basin_depth - float_highest", "Least float below rim"),
  float_spills_nothing: check(
    "stop_spill<=0.01[gal]",
    "A stop brings {stop_water}, but over a float {float_below_rim} below the rim is room for {stop_room}. Set it {float_least_below_rim|up} below the rim on sheet Decisions.",
    { label: "Float too high" },
  ),
  float_keeps_days: check(
    "water_filled>=MIN(basin_water_held,basin_water_needed)",
    "A fill to the float {float_below_rim} below the rim leaves {water_filled} at rest, where {basin_water_needed} are needed: raise the float, or fill more often.",
    { label: "Float too low for days", level: "look" },
  ),
  float_covers_pump: check(
    "float_level>=pump_minimum_water",
    "The float keeps {float_level} of water while the pump runs, which needs {pump_minimum_water}: raise the float on sheet Decisions, or enlarge the basin.",
    { label: "Float too low" },
  ),
});
