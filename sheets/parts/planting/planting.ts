import {
  area,
  calc,
  count,
  decide,
  length,
  lines,
  office,
  percent,
  smallLength,
} from "../../../engine/template/index.js";
import { soilVolume } from "../../vocabulary/quantities.js";
import { minus } from "../added.js";
import type { Whole } from "../brought.js";
import { practice } from "../rates.js";

/** What the work leaves behind, and how much of it is made good: nothing, unless the estimator says so. */
export const planting = ({ added }: Pick<Whole, "added">) =>
  lines("Lawn repair and planting", {
    trench_strip: office(length, "Lawn torn along a trench", {
      default: 4,
      least: 0,
      most: 30,
      note: "Width of trench, its heap, and where people walk.",
      source: practice,
    }),
    path_strip: office(length, "Lawn worn along the way", {
      default: 6,
      least: 0,
      most: 30,
      note: "Width of the way of machine and barrows.",
      source: practice,
    }),
    around_work: calc(
      area,
      `MAX(0[ft²],strip_area-basin_plan${minus(added("covered"))})`,
      "Stripped ground beside the work",
    ),
    disturbed_ground: calc(
      area,
      "around_work+SUM(trenches.dug)*trench_strip+access_length*path_strip",
      "Disturbed ground",
      { strong: true, note: "Beside the work, along trenches, and the way in." },
    ),
    lawn_share: decide(percent, "Lawn repaired, of disturbed ground", {
      default: 0,
      least: 0,
      most: 1,
      decimals: 0,
      note: "0: lawn repair is not in the price, and the proposal says so.",
    }),
    lawn_area: calc(area, "disturbed_ground*lawn_share", "Lawn to repair"),
    plants_wanted: decide(count, "Plants", { default: 0, least: 0, most: 5000, whole: true }),
    planting_bed: decide(area, "Planting bed", { default: 0, least: 0, most: 100000 }),
    bark_depth: office(smallLength, "Bark mulch depth", {
      default: 3,
      least: 0,
      most: 12,
      source: "university extension services: 2 to 4 in (from memory)",
    }),
    bark_volume: calc(soilVolume, "planting_bed*bark_depth", "Bark mulch"),
    topsoil_depth: decide(smallLength, "Topsoil brought in, depth", {
      default: 0,
      least: 0,
      most: 24,
      note: "Over lawn and bed, with the topsoil kept not counted.",
    }),
    topsoil_import: calc(soilVolume, "(lawn_area+planting_bed)*topsoil_depth", "Topsoil brought in"),
  });
