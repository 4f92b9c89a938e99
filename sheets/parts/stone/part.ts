import { unprinted } from "../../../engine/template/index.js";
import { bullet } from "../../plan/page-line.js";
import { stoneFormulas } from "../../vocabulary/stone.js";
import { item } from "../goods.js";
import { hired } from "../hire.js";
import { part } from "../part.js";
import { bedsBought } from "./beds-bought.js";
import { stoneCautions } from "./cautions.js";
import { crewOfStone } from "./crew-lines.js";
import { stoneKindTable } from "./kinds.js";
import { liftingChart, machinesTable, stoneLifting } from "./lifting.js";
import { stoneMeasures } from "./measures.js";
import { stonePlaceTable } from "./places.js";
import { rockTable } from "./rocks.js";
import { stoneTotals } from "./stone-bought.js";
import { stoneSaid } from "./stone-said.js";
import { stoneTasks } from "./tasks.js";

const rows = Array.from({ length: stoneKindTable.rows }, (_, i) => i + 1);

export const stone = part("Stone", "Stone by class: weight, loads, and the heaviest against the machine.", {
  blocks: {
    Stone: [stoneTotals, stonePlaceTable, stoneKindTable, stoneMeasures, bedsBought, stoneLifting],
    Wording: [stoneSaid],
  },
  below: { Stone: [stoneCautions, unprinted(liftingChart), rockTable], Prices: [machinesTable] },
  formulas: stoneFormulas,
  buys: {
    Stone: rows.map((row) => ({
      what: `row ${row} of the kinds`,
      code: `INDEX(stones.code,${row})&""`,
      wanted: `INDEX(stones.to_buy,${row})`,
      unit: "ton",
      byLoad: true,
      named: "stones.name",
      waste: 0.05,
    })),
  },
  takeoff: [
    {
      what: "mortar of the beds, a bag for each ‹0.6 ft³|17 L›",
      code: "mortar",
      wanted: "bed_mortar/0.6[ft³]",
      unit: "each",
      waste: 0.1,
    },
  ],
  items: [
    item("stone-lip", "lip stones", "ton"),
    item("stone-boulder", "wall boulders", "ton"),
    item("stone-cobble", "cobble", "ton"),
    item("gravel-washed", "washed gravel", "ton"),
    item("stone-basin", "stone around the crates", "ton"),
  ],
  hires: [
    hired(
      "Stone, gravel and sand delivered",
      "truck_loads",
      "stone-load",
      "Truck load of stone, gravel or sand delivered",
      "$/load",
    ),
  ],
  tasks: stoneTasks,
  crew: crewOfStone,
  proposal: [
    bullet(
      "scope",
      "About {stone_tons|0} of stone; the largest weighs about {heaviest_about|0}.",
      "AND(stone_tons>0,heaviest_stone>0)",
    ),
    bullet("scope", "About {stone_tons|0} of stone.", "AND(stone_tons>0,heaviest_stone<=0)"),
  ],
});
