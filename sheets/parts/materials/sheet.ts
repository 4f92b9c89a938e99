import { type SheetDeclaration, sheet } from "../../../engine/template/index.js";
import { basinMaterials } from "../basin/materials.js";
import { groundBuys } from "../earthwork/materials.js";
import { linerBuys } from "../liner/liner-bought.js";
import { stoneBuys } from "../stone/stone-bought.js";
import { type BuysSource, takeoffLines } from "./lines.js";
import { otherLines } from "./other-lines.js";
import { pipeLines } from "./pipe-lines.js";
import { extraLines, takeoffInputs, takeoffTotals, taxes } from "./tables.js";

/** The sheet that prices what is bought, with the "to buy" tables of the sheets before. */
export const takeoffOf = (sources: readonly BuysSource[]): SheetDeclaration =>
  sheet(
    "Materials",
    "Everything that is bought: quantity, waste, whole packs, and the price-book item it is bought as.",
    [
      takeoffTotals,
      takeoffInputs,
      takeoffLines(sources, [...pipeLines, ...otherLines]),
      extraLines,
      taxes,
    ],
  );

export const takeoffSheet = takeoffOf([
  { buys: basinMaterials },
  { buys: linerBuys },
  { buys: stoneBuys, names: "stones.name", waste: 0.05 },
  { buys: groundBuys, waste: 0.05 },
]);
