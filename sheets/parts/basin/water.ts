import {
  calc,
  check,
  count,
  days,
  decide,
  length,
  lines,
  number,
  smallLength,
  text,
} from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { sumOf } from "../added.js";
import type { Whole } from "../brought.js";
import { longestBasin } from "./hole.js";

/** The water that must be there, against the water that the hole holds. */
export const basinWater = ({ added, words }: Pick<Whole, "added" | "words">) =>
  lines("Water needed and held", {
    water_into_stream: calc(
      waterVolume,
      sumOf(added("water out"), "0[gal]"),
      `Water ${words["in stream"]} while running`,
    ),
    water_drained_back: calc(waterVolume, "drain_back", "Drain-back at a stop"),
    below_pump_minimum: calc(
      waterVolume,
      "HELD_BELOW(pump_minimum_water,crate_top,lower_water_area,upper_water_area)",
      "Below pump minimum",
      { note: "The pump's minimum level is taken from the bottom of the basin." },
    ),
    days_between_fills: decide(days, "Days between fills", {
      default: 4,
      least: 0,
      most: 60,
      whole: true,
      decimals: 0,
    }),
    water_reserve: calc(waterVolume, "loss_a_day*(days_between_fills/1[days])", "Reserve for evaporation and splash"),
    basin_water_needed: calc(
      waterVolume,
      "water_into_stream+water_drained_back+below_pump_minimum+water_reserve",
      "Basin water needed",
      { strong: true },
    ),
    basin_water_held: calc(
      waterVolume,
      "HELD_BELOW(full_depth,crate_top,lower_water_area,upper_water_area)",
      "Basin water held, full",
      { strong: true },
    ),
    water_to_float: calc(
      waterVolume,
      "HELD_BELOW(MAX(0[ft],basin_depth-override_float),crate_top,lower_water_area,upper_water_area)",
      "Water up to override float",
      { working: true },
    ),
    water_filled: calc(
      waterVolume,
      "IF(ISBLANK(override_float),basin_water_held,MIN(basin_water_held,water_to_float+water_into_stream+water_drained_back))",
      "Water after fill, at rest",
      { working: true, note: "A float that is chosen lower than the full line asks for fills the basin less." },
    ),
    days_it_lasts: calc(
      days,
      "IF(loss_a_day>0,INT(ROUND(MAX(0,water_filled-water_into_stream-water_drained_back-below_pump_minimum)/loss_a_day,6))*1[days],0[days])",
      "Days a full basin lasts",
      { decimals: 0, strong: true, zero: "no figure" },
    ),
    days_words: calc(
      text,
      'IF(loss_a_day <= 0, "no loss: the level does not fall noticeably", IF(days_it_lasts < 1[days], "less than a day", days_said))',
      "Days in words",
      { working: true },
    ),
    days_said: calc(text, "~about {days_it_lasts|0}", "Whole days", { working: true }),
    basin_holds: check(
      "basin_water_held>=basin_water_needed",
      "The basin holds {basin_water_held}, but {basin_water_needed} are needed: on sheet Decisions {basin_remedy}, or reduce days between fills.",
      { label: "Basin too small" },
    ),
    length_by_volume: calc(
      length,
      "IF(basin_water_held>below_pump_minimum,length_ratio*basin_length,0)",
      "Length by volume alone",
      { working: true, zero: "none" },
    ),
    columns_usable: calc(count, "WHOLE_UP((vault_places+1)/MAX(1,crate_rows))", "Crate columns, least usable", {
      working: true,
      note: "Room in a layer for the vaults and one crate.",
    }),
    columns_enough: calc(
      count,
      "MAX(columns_usable,WHOLE_UP(MAX(0[ft],length_by_volume-2*crate_gap)/MAX(0.1[in],crate_along)))",
      "Crate columns enough",
      { working: true },
    ),
    length_in_crates: calc(
      length,
      `MAX(${["2[ft]", "2*crate_gap+columns_enough*crate_along", ...added("basin length")].join(",")})`,
      "Length in whole crates",
      {
        working: true,
      },
    ),
    basin_length_enough: calc(
      length,
      `IF(AND(length_by_volume>0,length_in_crates<=${longestBasin}[ft]),length_in_crates,0)`,
      "Length enough (about)",
      { working: true, zero: "none", note: "Whole crates, and never less than the vaults and one crate need." },
    ),
    length_ratio: calc(
      number,
      "MAX(0[gal],basin_water_needed-below_pump_minimum)/MAX(0.001[gal],basin_water_held-below_pump_minimum)",
      "Length enough over length",
      { working: true, zero: "none" },
    ),
    basin_lengthen: calc(
      text,
      "~lengthen it to {basin_length_enough|up}, make it wider or deeper",
      "Remedy by length",
      {
        working: true,
      },
    ),
    basin_remedy: calc(
      text,
      'IF(basin_length_enough > 0, basin_lengthen, "make it deeper, since no length would do")',
      "Remedy",
      { working: true },
    ),
    crates_to_spare: calc(
      count,
      "MAX(0,crate_columns-columns_enough)*crate_rows*crate_layers",
      "Crates saved (about)",
      {
        working: true,
      },
    ),
    basin_not_oversize: check(
      `OR(${["basin_water_held<=2*basin_water_needed", "crates_to_spare<=0", ...added("basin kept")].join(",")})`,
      "The basin holds {basin_water_held}, over twice the {basin_water_needed} needed. Shorten it to about {basin_length_enough|up} on sheet Decisions; that saves {crates_to_spare|0} crates.",
      { label: "Basin oversized", level: "look" },
    ),
    level_at_rest: calc(
      length,
      "LEVEL_OF(water_filled,crate_top,lower_water_area,upper_water_area)",
      "Level at rest, full",
    ),
    level_running: calc(
      length,
      "LEVEL_OF(MAX(0,water_filled-water_into_stream-water_drained_back),crate_top,lower_water_area,upper_water_area)",
      "Level while running",
      { strong: true },
    ),
    running_below_rim: calc(smallLength, "basin_depth - level_running", "Rim above running water"),
    lift_matches_level: check(
      "running_below_rim<=rim_above_water+0.5[in]",
      `The running water stands {running_below_rim|1|up} below the basin's rim, but the lift counts {rim_above_water|1}: enter {running_below_rim|1|up} as ${words.rim} on sheet Decisions.`,
      { label: "Lift too low", level: "look" },
    ),
  });
