import { calc, days, length, table, text } from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";

/** Levels as the basin is left without a fill. Eight rows reach just past the days asked for. */
export const basinDays = table(
  "basin_days",
  "Levels between fills",
  { working: true, rows: 8 },
  {
    dry_days: calc(days, "above.dry_days+MAX(1[days],INT((days_between_fills+6[days])/7))", "Days without a fill", {
      first: "0",
      decimals: 0,
    }),
    water: calc(waterVolume, "MAX(0,water_filled-loss_a_day*(dry_days/1[days]))", "Water left, at rest"),
    rest_level: calc(length, "LEVEL_OF(water,crate_top,lower_water_area,upper_water_area)", "Level at rest"),
    running_level: calc(
      length,
      "LEVEL_OF(MAX(0,water-water_into_stream-water_drained_back),crate_top,lower_water_area,upper_water_area)",
      "Level running",
    ),
    lowest: calc(length, "pump_minimum_water", "Lowest for pump"),
    state: calc(text, 'IF(running_level >= pump_minimum_water, "runs", "stop the pump: it would draw air")', "State"),
  },
);
