import { sheet } from "../../../engine/template/index.js";
import { bedsBought } from "./beds-bought.js";
import { stoneCautions } from "./cautions.js";
import { stoneClassTable } from "./classes.js";
import { liftingChart, stoneLifting } from "./lifting.js";
import { rockTable } from "./rocks.js";
import { stoneBuys, stoneTotals } from "./stone-bought.js";

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
