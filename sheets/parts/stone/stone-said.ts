import { calc, type TableBlock, table, text } from "../../../engine/template/index.js";
import { stoneClassTable } from "./classes.js";

/** The heaviest stone of each class, for the crew. */
export const stoneSaid: TableBlock = table(
  "stone_said",
  "Heaviest stone of each class",
  { rows: stoneClassTable.rows, beside: "stones", filled: "tons>0" },
  {
    said: calc(text, (row) => `~{stones.heaviest[${row}]|0}`, "Heaviest stone", {
      reader: "crew",
    }),
  },
);
