import { calc, type TableBlock, table, text } from "../../../engine/template/index.js";
import { stonePlaceTable } from "./places.js";

/** The heaviest stone of each place, for the crew. */
export const stoneSaid: TableBlock = table(
  "stone_said",
  "Heaviest stone of each place",
  { rows: stonePlaceTable.rows, beside: "stone_places", filled: "tons>0" },
  { said: calc(text, "~{heaviest|0}", "Heaviest stone", { reader: "crew" }) },
);
