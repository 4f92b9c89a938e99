import {
  calc,
  check,
  flow,
  hours,
  input,
  length,
  lines,
  smallLength,
} from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { waterVolume } from "../../vocabulary/quantities.js";

const plumbing = "municipal backflow rules: twice the bore of the supply, 1 in at least";

export const fillLine = lines("Fill line", {
  fill_valve_code: itemCode("Item code of the fill valve", { default: "fill-valve" }),
  fill_pipe_code: itemCode("Item code of the fill pipe", { default: "fill-pipe" }),
  fill_line_length: input(length, "Length of the fill line", { default: 40, least: 0, most: 2000 }),
  fill_line_bore: input(smallLength, "Bore of the fill line", {
    default: 0.75,
    least: 0.25,
    most: 4,
  }),
  fill_flow: input(flow, "Flow of the fill line", {
    default: 4,
    least: 0.1,
    most: 100,
    note: "Time a bucket at the tap.",
  }),
  air_gap: input(smallLength, "Air gap from its mouth down to the rim", {
    default: 2,
    least: 0,
    most: 24,
  }),
  air_gap_needed: calc(smallLength, "MAX(2 * fill_line_bore, 1[in])", "Air gap needed", {
    source: plumbing,
    note: "Near a wall three times the bore; the local code decides.",
  }),
  air_gap_enough: check(
    "air_gap >= air_gap_needed",
    "The fill line ends {air_gap} above the rim, but {air_gap_needed} are needed: raise it, or have a licensed plumber fit a listed backflow preventer.",
    { label: "The air gap keeps basin water out of the supply" },
  ),
  first_fill_water: calc(
    waterVolume,
    "float_water + water_into_stream + bed_water_kept + pool_water + pot_water + pipe_water",
    "Water of the first fill",
    {
      note: "All that is there while it runs: basin up to the float, stream, bed, pools, pots and pipes, each once.",
    },
  ),
  first_fill_hours: calc(
    hours,
    "first_fill_water / fill_flow",
    "Time of the first fill by this line",
  ),
  daily_fill_hours: calc(hours, "loss_a_day / fill_flow", "Time to make up a day's loss", {
    decimals: 2,
  }),
  fill_keeps_up: check(
    "daily_fill_hours <= 24[h]",
    "A day's loss of {loss_a_day} takes {daily_fill_hours} at {fill_flow}: the line never catches up. Run a larger line or cut the loss.",
    { label: "The fill line keeps up with the loss" },
  ),
});
