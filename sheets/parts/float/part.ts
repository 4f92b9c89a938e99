import { bullet } from "../page-line.js";
import { part } from "../part.js";
import { fillFloat } from "./float.js";

export const float = part("Fill float", "The height of the float, so that a stop does not spill.", {
  blocks: { Basin: [fillFloat] },
  crew: [
    bullet(
      "basin",
      "Fill float: while the pump runs it shuts at {float_below_rim|up} below the rim. Never nearer than {float_least_below_rim|up}, or a stop spills.",
      "fill_line_length>0",
    ),
  ],
});
