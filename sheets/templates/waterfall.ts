import type { Template } from "../../engine/template/index.js";
import { assemble } from "../parts/assemble.js";
import { bookSharers } from "./book-sharers.js";
import { headline, roles } from "./roles.js";
import { waterfallParts } from "./waterfall-parts.js";

export { waterfallParts };

/** A disappearing waterfall: falls, stream, buried basin, and all that it takes to build and price them. */
export const waterfall: Template = assemble(
  {
    name: "waterfall",
    version: 1,
    title: "Disappearing waterfall",
    headline: [...headline, "price_per_foot", "stone_tons"],
    example: {
      table: "falls",
      input: "falls.width",
      typed: "3 ft 6 in",
      result: "falls.design_flow",
      figure: "total_flow",
    },
    roles,
    sharesBook: () => bookSharers("waterfall"),
  },
  waterfallParts,
);
