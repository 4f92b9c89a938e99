import { type Block, calc, table, text } from "../../../engine/template/index.js";
import { linerRolls } from "./rolls.js";

/** What is asked for of each roll, as the supplier cuts it. */
export const linerOrders: Block = table(
  "liner_orders",
  "Liner by roll",
  { rows: linerRolls.rows, beside: "liner_rolls", filled: "length_bought>0" },
  {
    said: calc(text, "~{length_bought|up} of the {width} roll", "For the supplier", {
      reader: "supplier",
    }),
  },
);
