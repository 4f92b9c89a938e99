import { bullet } from "../../plan/page-line.js";
import { fittings, inletFittings, tees } from "../../tables/fittings.js";
import { pipeSizes } from "../../tables/pipe-bores.js";
import { counted } from "../../vocabulary/counted.js";
import { pipeFormulas } from "../../vocabulary/pipe.js";
import { part } from "../part.js";
import { task } from "../task.js";
import { pipeLaid } from "./laying.js";
import { mainBlocks, mainSizes } from "./main.js";

export const main = part("Main", "The pipe from pump to manifold.", {
  section: "Main pipe",
  blocks: { Piping: mainBlocks },
  below: { Piping: [mainSizes], "Water tables": [pipeSizes, fittings, tees, inletFittings] },
  formulas: pipeFormulas,
  tasks: [task("Lay the main", "main", "main_length", pipeLaid)],
  crew: [
    bullet(
      "step: main",
      'Main: {main_size} pipe, {main_length}, {main_elbows_90|0} × 90°{IF(main_elbows_45>0,", "&FIXED(main_elbows_45,0)&" × 45°","")}. Begins with: {inlet_fitting}.',
    ),
    bullet(
      "step: main",
      `At the pump: unions, {flexible_length} of flexible pipe to lift it out{IF(main_valves>0,"; "&${counted("main_valves", "ball valve", "ball valves")}&" of the main's size, open","")}.`,
    ),
    bullet("step: main", "A check valve goes into the main.", "check_valve_fitted"),
  ],
});
