import { calc, count, decide, lines, office, tons, yesno } from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { soilVolume } from "../../vocabulary/quantities.js";

/** What is dug against what is filled; the difference comes or goes by truck. */
export const groundBalance = lines("Balance", {
  berm_foundation: calc(soilVolume, "SUM(berms.footprint)*strip_depth", "Topsoil refilled under berms", {
    working: true,
    note: "A berm's height is measured from the ground as it was before stripping.",
  }),
  berm_volume: calc(soilVolume, "SUM(berms.volume)+berm_foundation", "Berms, compacted in place", {
    note: "With the stripped layer under them.",
    strong: true,
    zero: "0",
  }),
  fill_needed: calc(soilVolume, "(berm_volume+backfill)/compacted_factor", "Fill needed, in place", {
    note: "Berms, the stripped layer under them, and backfill.",
    zero: "0",
  }),
  fill_on_site: calc(soilVolume, "dig_volume+trench_spare", "Fill on site, in place", {
    note: "Topsoil is not counted: it must not go into a berm that carries stone.",
  }),
  dirt_fits_berm: decide(yesno, "Dirt fit for the berm", {
    default: true,
    note: "No roots, no sod, not too wet to compact. If not, all of it is hauled off and soil for the berm is bought.",
  }),
  dirt_used: calc(soilVolume, "IF(dirt_fits_berm,MIN(fill_needed,fill_on_site),0)", "Dirt used, in place", {
    working: true,
  }),
  import_volume: calc(soilVolume, "(fill_needed-dirt_used)*loose_factor", "Soil import, loose", {
    strong: true,
    zero: "0",
    note: "Taken to be soil of the same kind.",
  }),
  dirt_stays: decide(yesno, "Leftover dirt spread on site", { default: false }),
  haul_volume: calc(
    soilVolume,
    "IF(dirt_stays,0,(fill_on_site-dirt_used)*loose_factor)+strip_volume*(1-topsoil_kept)*loose_factor",
    "Haul-off, loose",
    { strong: true, zero: "0" },
  ),
  haul_bed: office(soilVolume, "Truck bed volume, loose", {
    default: 10,
    least: 0.5,
    most: 40,
    source: "common practice, no source",
  }),
  haul_payload: office(tons, "Haul truck payload", {
    default: 12,
    least: 0.25,
    most: 40,
    source: "common practice, no source",
  }),
  haul_weight: calc(tons, "haul_volume/loose_factor*soil_density", "Haul-off weight", { working: true }),
  haul_loads: calc(
    count,
    "WHOLE_UP(MAX(haul_volume/MAX(0.1[yd³],haul_bed),haul_weight/MAX(0.1[ton],haul_payload)))",
    "Haul-off loads",
    { note: "By room or by weight, whichever is more.", strong: true },
  ),
  dirt_wheeled: calc(
    soilVolume,
    "IF(by_hand,strip_volume*(1+topsoil_kept)+dig_volume+backfill+import_volume/loose_factor,0)",
    "Dirt wheeled, in place",
    {
      working: true,
      note: "Out of the dig and back into fill; topsoil to its heap and back. A machine's rates hold the way.",
    },
  ),
  import_code: itemCode("Imported soil item code", {
    default: "fill-soil",
    note: "Its price holds the delivery: no truck is counted for it.",
  }),
});
