import {
  area,
  calc,
  check,
  decide,
  length,
  lines,
  office,
  published,
  smallLength,
} from "../../../engine/template/index.js";

/** Longest basin that may be given, in ft. */
export const longestBasin = 100;

/** Inside sizes of the lined hole, with upright sides; the defaults hold two layers of common crates around a vault. */
export const hole = lines("Basin inside the liner", {
  basin_length: decide(length, "Basin length", { again: true, default: 6, least: 2, most: longestBasin }),
  basin_width: decide(length, "Basin width", { again: true, default: 5, least: 2, most: 60 }),
  basin_depth: decide(length, "Basin depth to rim", { again: true, default: 3.5, least: 1, most: 10 }),
  basin_freeboard: office(smallLength, "Freeboard", {
    default: 6,
    least: 0,
    most: 36,
    note: "From the full line up to the rim. Room for rain; the water must stay out of sight under the stone. Common practice, no source.",
  }),
  hidden_least: published(smallLength, "Least stone over water", {
    working: true,
    value: 2,
    source: "common practice, no source",
  }),
  basin_hidden: check(
    "basin_freeboard>=hidden_least",
    "Full water stands {basin_freeboard} under the stone; less than {hidden_least} is open water, where a child can drown. Raise freeboard on sheet Office rules.",
    { label: "Basin water in the open" },
  ),
  full_depth: calc(length, "MAX(0[ft],basin_depth-basin_freeboard)", "Water depth, full"),
  basin_plan: calc(area, "basin_length*basin_width", "Basin plan area", { working: true }),
  full_line_in_hole: check(
    "basin_freeboard<basin_depth",
    "Freeboard of {basin_freeboard} is more than the basin's depth of {basin_depth}: dig deeper on sheet Decisions, or reduce freeboard on sheet Office rules.",
    { label: "Freeboard over basin depth" },
  ),
  pump_under_water: check(
    "pump_minimum_water<full_depth",
    "The pump needs {pump_minimum_water} of water, but the basin holds only {full_depth} when full: dig deeper or choose a pump that draws lower.",
    { label: "Basin too shallow for pump" },
  ),
});
