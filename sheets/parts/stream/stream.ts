import {
  area,
  type Block,
  calc,
  decide,
  length,
  lines,
  office,
  paragraphs,
  percent,
  smallLength,
} from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { depthSearch } from "./depth-search.js";
import { poolsTable } from "./pools-table.js";
import { runsTable } from "./runs-table.js";
import { standingWater } from "./standing-water.js";

/** The stream: how deep it runs, how much water is out there while it does. */
export const streamBlocks: readonly Block[] = [
  runsTable,
  poolsTable,
  lines("The whole stream", {
    usual_run_fall: office(length, "Fall of a run, unmeasured", {
      default: 0.25,
      least: 0.01,
      most: 10,
      note: "Taken for a run whose fall is neither given nor read by rod.",
      source: "common practice, no source",
    }),
    depth_allowance: office(percent, "Allowance on stream depth", {
      default: 0.5,
      least: 0,
      most: 1,
      decimals: 0,
      note: "On water, banks and basin. 0 %: as calculated. 50 % covers the formula's spread: twice or half the speed at a depth is up to 1.5 times the depth at a flow.",
      source: "Ferguson 2007: errors of a factor of two in speed occur with every formula",
    }),
    freeboard: office(smallLength, "Freeboard", {
      default: 3,
      least: 0,
      most: 24,
      note: "Bank left over the depth to plan for.",
      source: "common practice, no source",
    }),
    bed_stone_depth: decide(smallLength, "Bed stone depth", {
      default: 4,
      least: 0,
      most: 36,
      source: "common practice, no source",
    }),
    bed_share_drained: office(percent, "Bed water drained at stop", {
      default: 0.75,
      least: 0,
      most: 1,
      decimals: 0,
      note: "The rest stays in hollows of the liner. The more drains, the more the basin must hold.",
      source: "common practice, no source",
    }),
    stream_length: calc(length, "SUM(runs.length_counted)+SUM(pools.length_counted)", "Stream length", {
      strong: true,
    }),
    run_water: calc(waterVolume, "SUM(runs.water_held)", "Water in the runs"),
    pool_rise_water: calc(waterVolume, "SUM(pools.water_held)", "Water raising the pools"),
    bed_water: calc(waterVolume, "SUM(runs.water_in_bed)*bed_share_drained", "Bed water that drains"),
    bed_water_kept: calc(waterVolume, "SUM(runs.water_in_bed)-bed_water", "Bed water that stays"),
    stream_water: calc(waterVolume, "run_water+bed_water+pool_rise_water+lip_water", "Water in stream while running", {
      strong: true,
    }),
    pool_water: calc(waterVolume, "SUM(pools.water_standing)", "Standing pool water"),
    stream_surface: calc(area, "SUM(runs.surface)+SUM(pools.surface)", "Stream water surface"),
  }),
  standingWater,
  paragraphs(
    "Notes",
    "Depths are those of steady flow by Ferguson's formula for water over stone, from the mean level of the bed. At a given depth the speed can be half or twice of that: the depth then differs by a factor of 1.3 where water is shallower than its stone, 1.5 where it is deep. The allowance covers that; it raises the water held, not the speed.",
    "Manning's formula does not hold where water is less than four times as deep as its stone (from there on roughness is of small scale, after Bathurst 1985, from memory): it gives too little depth there, and stands on sheet Workings to compare.",
  ),
  depthSearch,
];
