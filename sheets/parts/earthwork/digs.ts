import { area, calc, decide, length, lines, office, percent, smallLength } from "../../../engine/template/index.js";
import { soilVolume } from "../../vocabulary/quantities.js";
import { plus } from "../added.js";
import type { Whole } from "../brought.js";

const practice = "common practice, no source";

export const digs = ({ added, cellsAt }: Pick<Whole, "added" | "cellsAt">) =>
  lines("Strip and dig, in place", {
    strip_depth: decide(smallLength, "Topsoil depth stripped", { default: 4, least: 0, most: 24 }),
    strip_margin: office(length, "Stripping beyond the work", {
      note: "On each side.",
      default: 2,
      least: 0,
      most: 30,
      source: practice,
    }),
    ...cellsAt("stripped"),
    strip_area: calc(
      area,
      `(dig_top_length+2*strip_margin)*(dig_top_width+2*strip_margin)${plus(added("stripped"))}`,
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
    ...cellsAt("dug"),
    basin_topsoil_depth: calc(length, "MIN(strip_depth,dig_depth)", "Topsoil depth over basin", { working: true }),
    basin_topsoil: calc(
      soilVolume,
      "PRISMOID(dig_top_length-2*dig_slope*basin_topsoil_depth,dig_top_width-2*dig_slope*basin_topsoil_depth,basin_topsoil_depth,dig_slope)",
      "Topsoil over the basin",
      { working: true },
    ),
    dig_topsoil: calc(soilVolume, `basin_topsoil${plus(added("topsoil"))}`, "Topsoil over the digs", {
      working: true,
      note: "Already stripped.",
    }),
    dig_volume: calc(soilVolume, `basin_dig+basin_bank_cut${plus(added("dug"))}-dig_topsoil`, "Dig, in place", {
      note: "Basin with its bank and all other digs but trenches, below the stripped topsoil.",
      strong: true,
    }),
    backfill: calc(soilVolume, `basin_backfill${plus(added("refilled"))}`, "Backfill, all digs", {
      working: true,
      note: "Compacted in place; trenches apart.",
    }),
  });
