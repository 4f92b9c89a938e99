import { area, calc, decide, length, lines, office, percent, smallLength } from "../../../engine/template/index.js";
import { soilVolume } from "../../vocabulary/quantities.js";

const practice = "common practice, no source";

export const digs = lines("Strip and dig, in place", {
  strip_depth: decide(smallLength, "Topsoil depth stripped", { default: 4, least: 0, most: 24 }),
  strip_margin: office(length, "Stripping beyond the work", {
    note: "On each side.",
    default: 2,
    least: 0,
    most: 30,
    source: practice,
  }),
  stream_on_berms: decide(percent, "Stream on berms, share", {
    default: 0,
    least: 0,
    most: 1,
    decimals: 0,
    note: "Stripped once, under the berm. 0: all of the stream is stripped too, on the safe side.",
  }),
  stream_ground: calc(
    area,
    "(SUMPRODUCT(runs.length_counted*(channel_cuts.top+2*strip_margin))+SUM(pool_cuts.ground))*(1-stream_on_berms)",
    "Stream ground stripped",
    { working: true },
  ),
  strip_area: calc(
    area,
    "(dig_top_length+2*strip_margin)*(dig_top_width+2*strip_margin)+stream_ground+SUM(berms.footprint)",
    "Area stripped",
  ),
  strip_volume: calc(soilVolume, "strip_area*strip_depth", "Topsoil stripped", { strong: true }),
  topsoil_kept: decide(percent, "Topsoil kept on site", {
    note: "And spread again.",
    default: 1,
    least: 0,
    most: 1,
    decimals: 0,
  }),
  channel_cut: decide(percent, "Cut share of channel", {
    note: "The rest of its depth is built up.",
    default: 0.5,
    least: 0,
    most: 1,
    decimals: 0,
  }),
  channel_allowance: office(smallLength, "Extra width for stone", {
    default: 4,
    least: 0,
    most: 36,
    note: "The bed is cut deeper by the depth of its stone, which stands on sheet Decisions.",
    source: practice,
  }),
  channel_dig: calc(soilVolume, "SUM(channel_cuts.dig)", "Channel of the stream"),
  pool_dig: calc(soilVolume, "SUM(pool_cuts.dig)", "Pools"),
  pool_backfill: calc(soilVolume, "SUM(pool_cuts.sloped)", "Backfill around pools", {
    working: true,
    note: "Of pools with sloped sides.",
  }),
  basin_topsoil_depth: calc(length, "MIN(strip_depth,dig_depth)", "Topsoil depth over basin", { working: true }),
  basin_topsoil: calc(
    soilVolume,
    "PRISMOID(dig_top_length-2*dig_slope*basin_topsoil_depth,dig_top_width-2*dig_slope*basin_topsoil_depth,basin_topsoil_depth,dig_slope)",
    "Topsoil over the basin",
    { working: true },
  ),
  dig_topsoil: calc(
    soilVolume,
    "basin_topsoil+(SUM(channel_cuts.topsoil)+SUM(pool_cuts.topsoil))*(1-stream_on_berms)",
    "Topsoil over the digs",
    { working: true, note: "Already stripped." },
  ),
  dig_volume: calc(soilVolume, "basin_dig+basin_bank_cut+channel_dig+pool_dig-dig_topsoil", "Dig, in place", {
    note: "Basin with its bank, channel and pools, below the stripped topsoil.",
    strong: true,
  }),
});
