import { sheet } from "../engine/template/index.js";
import { carrying } from "./liner/carrying.js";
import { linerCautions } from "./liner/cautions.js";
import { linerBuys, linerTotals } from "./liner/liner-bought.js";
import { linerPieces } from "./liner/pieces.js";
import { linerRolls } from "./liner/rolls.js";
import { linerRules } from "./liner/rules.js";
import { linerWorking } from "./liner/working.js";

export const linerSheet = sheet(
  "Liner",
  "The pieces of liner from the geometry, how to cut them from stocked rolls, and who can carry them.",
  [
    linerTotals,
    linerRules,
    linerPieces,
    linerRolls,
    carrying,
    linerBuys,
    linerCautions,
    linerWorking,
  ],
);
