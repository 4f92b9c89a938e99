import { sheet } from "../engine/template/index.js";
import { bedsBought } from "./stone/beds-bought.js";
import { stoneCautions } from "./stone/cautions.js";
import { stoneClassTable } from "./stone/classes.js";
import { liftingChart, stoneLifting } from "./stone/lifting.js";
import { rockTable } from "./stone/rocks.js";
import { stoneBuys, stoneTotals } from "./stone/stone-bought.js";

export const stoneSheet = sheet(
  "Stone",
  "Stone by class: from the ground it covers to weight and loads, and the heaviest stone against the machine.",
  [
    stoneTotals,
    stoneClassTable,
    bedsBought,
    stoneLifting,
    liftingChart,
    stoneBuys,
    stoneCautions,
    rockTable,
  ],
);
