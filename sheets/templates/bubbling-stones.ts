import type { Template } from "../../engine/template/index.js";
import { assemble } from "../parts/assemble.js";
import { bookSharers } from "./book-sharers.js";
import { bubblingParts } from "./bubbling-parts.js";
import { roles } from "./roles.js";

/** Bubbling stones: drilled stones and urns over a buried basin, each on a line of its own. */
export const bubblingStones: Template = assemble(
  {
    name: "bubbling-stones",
    version: 1,
    title: "Bubbling stones",
    headline: [
      "price",
      "margin",
      "man_hours",
      "work_days",
      "total_flow",
      "total_dynamic_head",
      "pump_watts",
      "basin_water_held",
      "basin_water_needed",
      "total_cost",
      "price_per_stone",
      "stones_weight",
    ],
    example: {
      table: "bubblers",
      input: "bubblers.tall",
      typed: "2 ft 6 in",
      result: "bubblers.design_flow",
      figure: "total_flow",
    },
    roles,
    sharesBook: bookSharers,
  },
  bubblingParts,
);
