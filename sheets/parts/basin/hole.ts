import {
  area,
  calc,
  check,
  input,
  length,
  lines,
  published,
  smallLength,
} from "../../../engine/template/index.js";

/** Longest basin that may be given, in ft. */
export const longestBasin = 100;

/** Inside sizes of the lined hole, with upright sides. */
export const hole = lines("The hole, inside the liner", {
  basin_length: input(length, "Length of the basin", {
    default: 12,
    least: 2,
    most: longestBasin,
  }),
  basin_width: input(length, "Width of the basin", { default: 8, least: 2, most: 60 }),
  basin_depth: input(length, "Depth of the basin, bottom to rim", {
    default: 3.5,
    least: 1,
    most: 10,
  }),
  basin_freeboard: input(smallLength, "Full line below the rim", {
    default: 6,
    least: 0,
    most: 36,
    note: "Room for rain; the water must stay out of sight under the stone. Common practice, no source.",
  }),
  hidden_least: published(smallLength, "Stone over the full water, at least", {
    value: 2,
    source: "common practice, no source",
  }),
  basin_hidden: check(
    "basin_freeboard >= hidden_least",
    "Full water stands {basin_freeboard} below the stone's surface: less than {hidden_least} is open water, where a child can drown. Lower the full line.",
    { label: "Basin water in the open" },
  ),
  full_depth: calc(length, "MAX(0[ft], basin_depth - basin_freeboard)", "Depth of water when full"),
  basin_plan: calc(area, "basin_length * basin_width", "Plan area of the basin"),
  full_line_in_hole: check(
    "basin_freeboard < basin_depth",
    "The full line is {basin_freeboard} below the rim, but the basin is only {basin_depth} deep: raise the full line or dig deeper.",
    { label: "The full line lies inside the basin" },
  ),
  pump_under_water: check(
    "pump_minimum_water < full_depth",
    "The pump needs {pump_minimum_water} of water, but the basin holds only {full_depth} when full: dig deeper or choose a pump that draws lower.",
    { label: "The full basin covers the pump's lowest level" },
  ),
});
