import { calc, type TableBlock, table, text } from "../../../engine/template/index.js";
import { fallsTable } from "./falls-table.js";

/** How much a lip stands above the lowest of its level, for the crew. */
export const lipSaid: TableBlock = table(
  "lip_said",
  "Lips of one level",
  { rows: fallsTable.rows, beside: "falls", filled: "lips_beside>0" },
  { raised: calc(text, "~{lip_raised}", "Above the lowest lip", { reader: "crew" }) },
);
