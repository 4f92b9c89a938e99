import { bullet } from "../../plan/page-line.js";
import { rockTable } from "../../tables/rock-table.js";
import { stoneFormulas } from "../../vocabulary/stone.js";
import { item } from "../goods.js";
import { part } from "../part.js";
import { stoneDelivered } from "../truck.js";
import { bedsBought } from "./beds-bought.js";
import { crewOfStone } from "./crew-lines.js";
import { heaviestStone } from "./heaviest.js";
import { stoneKindTable } from "./kinds.js";
import { stoneMeasures } from "./measures.js";
import { stonePlaceTable } from "./places.js";
import { stoneTotals } from "./stone-bought.js";
import { stoneSaid } from "./stone-said.js";
import { stoneTasks } from "./tasks.js";

const rows = Array.from({ length: stoneKindTable.rows }, (_, i) => i + 1);

export const stone = part("Stone", "Stone by class: weight, loads, and the heaviest against the machine.", {
  blocks: {
    Stone: [stoneTotals, stonePlaceTable, stoneKindTable, stoneMeasures, bedsBought],
    Wording: [stoneSaid],
  },
  below: { Stone: [rockTable] },
  formulas: stoneFormulas,
  heavy: { weight: "MAX(stone_places.heaviest)", lighter: "smaller stone in stone_places" },
  cells: { lifting: heaviestStone },
  buys: {
    Stone: rows.map((row) => ({
      what: `row ${row} of the kinds`,
      code: `INDEX(stones.code,${row})&""`,
      sized: "stones.size_said",
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
    item("stone-lip", "lip stones", "ton", 300),
    item("stone-boulder", "wall boulders", "ton"),
    item("stone-cobble", "cobble", "ton"),
    item("gravel-washed", "washed gravel", "ton"),
    item("stone-basin", "stone around the crates", "ton"),
  ],
  hires: [stoneDelivered],
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
