import {
  calc,
  count,
  input,
  lines,
  soilVolume,
  tons,
  yesno,
} from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";

/** What is dug against what is filled; the difference comes or goes by truck. */
export const groundBalance = lines("Balance", {
  berm_foundation: calc(
    soilVolume,
    "SUM(berms.footprint) * strip_depth",
    "Topsoil stripped under the berms, filled again",
    { note: "A berm's height is measured from the ground as it was before stripping." },
  ),
  berm_volume: calc(
    soilVolume,
    "SUM(berms.volume) + berm_foundation",
    "Berms with the stripped layer under them, compacted measure",
    { strong: true },
  ),
  fill_needed: calc(
    soilVolume,
    "(berm_volume + basin_backfill + pool_backfill) / compacted_factor",
    "Bank soil needed: berms, the stripped layer under them, backfill",
  ),
  fill_on_site: calc(
    soilVolume,
    "dig_volume + trench_spare",
    "Bank soil at hand: dig below the topsoil, and what the trench leaves over",
    { note: "Topsoil is not counted: it must not go into a berm that carries stone." },
  ),
  dirt_fits_berm: input(yesno, "The spoil is fit for the berm", {
    default: true,
    note: "No roots, no sod, not too wet to compact. If not, all of it is hauled and the berm is bought.",
  }),
  dirt_used: calc(
    soilVolume,
    "IF(dirt_fits_berm, MIN(fill_needed, fill_on_site), 0)",
    "Used on site, bank measure",
  ),
  import_volume: calc(
    soilVolume,
    "(fill_needed - dirt_used) * loose_factor",
    "Soil to bring in, loose measure",
    { strong: true, note: "Taken to be soil of the same kind." },
  ),
  dirt_stays: input(yesno, "What is left over is spread on site", { default: false }),
  haul_volume: calc(
    soilVolume,
    "IF(dirt_stays, 0, (fill_on_site - dirt_used) * loose_factor) + strip_volume * (1 - topsoil_kept) * loose_factor",
    "Soil to haul away, loose measure",
    { strong: true },
  ),
  haul_bed: input(soilVolume, "A truck's bed holds, loose", {
    default: 10,
    least: 0.5,
    most: 40,
    source: "common practice, no source",
  }),
  haul_payload: input(tons, "A truck may carry", {
    default: 12,
    least: 0.25,
    most: 40,
    source: "common practice, no source",
  }),
  haul_weight: calc(tons, "haul_volume / loose_factor * soil_density", "Weight to haul away"),
  haul_loads: calc(
    count,
    "ROUNDUP(ROUND(MAX(haul_volume / MAX(0.1[yd³], haul_bed), haul_weight / MAX(0.1[ton], haul_payload)), 6), 0)",
    "Loads to haul away: by room or by weight, whichever is more",
    { strong: true },
  ),
  import_code: itemCode("Item code of soil brought in", {
    default: "fill-soil",
    note: "Its price holds the delivery: no truck is counted for it.",
  }),
});
