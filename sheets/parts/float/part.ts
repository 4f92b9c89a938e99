import { bullet, line, under } from "../../plan/page-line.js";
import { part } from "../part.js";
import { fillFloat } from "./float.js";

/** A height is told only where it spills nothing, covers the pump and counts all that comes back. */
const safe = "AND(siphons_counted,float_spills_nothing,float_covers_pump)";
const fitted = "fill_line_length>0";

export const float = part("Fill float", "The height of the float, so that a stop does not spill.", {
  section: "Basin",
  blocks: { Basin: [fillFloat] },
  crew: [
    line(
      "stop: water",
      "STOP. Do not set the fill float as planned: a stop would spill {stop_spill|0|up} over the rim. The office lowers it.",
      `AND(${fitted},NOT(float_spills_nothing))`,
    ),
    line(
      "stop: water",
      "STOP. Do not set the fill float as planned: it leaves {float_level|down} of water where the pump needs {pump_minimum_water|up}. The office raises it.",
      `AND(${fitted},NOT(float_covers_pump))`,
    ),
    ...under(
      "Lay the fill line",
      bullet(
        "step: pipe",
        "Fill float: while the pump runs it shuts at {float_below_rim|up} below the rim. Never nearer than {float_least_below_rim|up}, or a stop spills. It hangs in the vault on its arm or cord; the mouth of the line stays over the rim.",
        `AND(${fitted},${safe})`,
      ),
      bullet("step: pipe", "Fill float: not to be set yet, see STOP.", `AND(${fitted},NOT(${safe}))`),
    ),
  ],
});
