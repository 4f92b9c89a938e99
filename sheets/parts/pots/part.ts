import { bulletEachRow, under } from "../../plan/page-line.js";
import { item } from "../goods.js";
import { part } from "../part.js";
import { production, withMachine } from "../rates.js";
import { task } from "../task.js";
import { potsLifted } from "./lifted.js";
import { potLines, potsTable } from "./pots.js";

const rows = Array.from({ length: potsTable.rows }, (_, i) => i + 1);

export const pots = part("Pots", "Pots, urns and spillway bowls: a lip that is bought, not built.", {
  section: "Lines and pots",
  blocks: { Falls: [potsTable, potLines] },
  cells: { "lifting checks": potsLifted },
  buys: {
    Falls: rows.map((row) => ({
      what: `pot ${row}`,
      code: `INDEX(pots.code,${row})&""`,
      wanted: `IF(INDEX(pots.rim,${row})>0,1,0)`,
      unit: "each",
      named: "pots.name",
    })),
  },
  items: [item("pot", "pot, urn or bowl", "each")],
  takeoff: [{ what: "fittings of pots, with gasket", code: "pot-fitting", wanted: "pots_fitted", unit: "each" }],
  tasks: [
    task(
      "Set pots on their base, fit and seal",
      "falls",
      "pots_set",
      withMachine(
        production("pot-set", "Set a pot on its base, fit and seal it", "each", 0.25),
        0.2,
        production("pot-set-hand", "Set a pot by hand, fit and seal it", "each", 0.2),
      ),
      ["by_access"],
    ),
  ],
  crew: under(
    "Set pots on their base, fit and seal",
    ...bulletEachRow(
      "step: falls",
      potsTable,
      "{name}: {empty|0} empty, {full|0} full, on {base}; {fitting}. Level its rim to the eye of the water.",
    ),
  ),
  told: ["pots.across"],
});
