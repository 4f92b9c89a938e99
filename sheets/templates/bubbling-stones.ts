import type { Template } from "../../engine/template/index.js";
import { assemble } from "../parts/assemble.js";
import { bookSharers } from "./book-sharers.js";
import { bubblingParts } from "./bubbling-parts.js";
import { headline, roles } from "./roles.js";

/** Bubbling stones: drilled stones and urns over a buried basin, each on a line of its own. */
export const bubblingStones: Template = assemble(
  {
    name: "bubbling-stones",
    version: 1,
    title: "Bubbling stones",
    headline: [...headline, "price_per_stone", "stones_weight"],
    example: {
      table: "bubblers",
      input: "bubblers.tall",
      typed: "2 ft 6 in",
      result: "bubblers.design_flow",
      figure: "total_flow",
    },
    roles,
    sharesBook: () => bookSharers("bubbling-stones"),
  },
  bubblingParts,
);
