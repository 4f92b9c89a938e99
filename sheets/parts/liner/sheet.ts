import { sheet } from "../../../engine/template/index.js";
import { carrying } from "./carrying.js";
import { linerCautions } from "./cautions.js";
import { linerBuys, linerTotals } from "./liner-bought.js";
import { linerPieces } from "./pieces.js";
import { linerRolls } from "./rolls.js";
import { linerRules } from "./rules.js";
import { linerWorking } from "./working.js";

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
