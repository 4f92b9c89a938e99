import {
  calc,
  check,
  flow,
  hours,
  length,
  lines,
  office,
  smallLength,
  text,
  walk,
} from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { plus } from "../added.js";
import type { Whole } from "../brought.js";

const plumbing = "municipal backflow rules: twice the bore of the supply, 1 in at least";

export const fillLine = ({ added }: Pick<Whole, "added">) =>
  lines("Fill line", {
    fill_valve_code: itemCode("Item code, fill valve", { default: "fill-valve" }),
    fill_pipe_code: itemCode("Item code, fill pipe", { default: "fill-pipe" }),
    fill_line_length: walk(length, "Fill line from hose bib", {
      section: "Power and water",
      default: 40,
      least: 0,
      most: 2000,
    }),
    fill_line_bore: office(smallLength, "Fill line bore", {
      default: 0.75,
      least: 0.25,
      most: 4,
    }),
    fill_bore_said: calc(text, '"bore "&fill_bore_words', "Fill line, as ordered", { working: true }),
    fill_bore_words: calc(text, "~{fill_line_bore}", "Fill line bore, in words", { working: true, reader: "crew" }),
    fill_flow: office(flow, "Fill line flow", {
      default: 4,
      least: 0.1,
      most: 100,
      note: "Time a bucket at the tap.",
    }),
    air_gap: office(smallLength, "Air gap", {
      default: 2,
      least: 0,
      most: 24,
      note: "From the mouth of the fill line down to the rim.",
    }),
    air_gap_needed: calc(smallLength, "MAX(2*fill_line_bore,1[in])", "Least air gap", {
      source: plumbing,
      note: "Near a wall three times the bore; the local code decides.",
    }),
    air_gap_enough: check(
      "air_gap>=air_gap_needed",
      "The air gap is {air_gap}, but {air_gap_needed} is needed. Raise its mouth, or have a licensed plumber fit a listed backflow preventer.",
      { label: "Air gap too small" },
    ),
    first_fill_water: calc(
      waterVolume,
      `float_water+water_into_stream${plus(added("first fill"))}+pot_water+pipe_water`,
      "First fill water",
      {
        note: "All that is there while it runs: basin up to the float, what is out of it, and pipes, each once.",
      },
    ),
    first_fill_hours: calc(hours, "IF(fill_flow>0,first_fill_water/fill_flow,0)", "First fill time"),
    daily_fill_hours: calc(hours, "IF(fill_flow>0,loss_a_day/fill_flow,0)", "Daily fill time", {
      decimals: 2,
    }),
    fill_keeps_up: check(
      "daily_fill_hours<=24[h]",
      "A day's loss of {loss_a_day} takes {daily_fill_hours} at {fill_flow}, so it never catches up. Run a larger line; enter its flow on sheet Office rules.",
      { label: "Fill line too small" },
    ),
  });
