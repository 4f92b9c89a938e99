import { calc, type TableBlock, table, text } from "../../../engine/template/index.js";
import { stonePlaceTable } from "./places.js";

/** The heaviest stone of each place, for the crew. */
export const stoneSaid: TableBlock = table(
  "stone_said",
  "Heaviest stone of each place",
  { rows: stonePlaceTable.rows, beside: "stone_places", filled: "tons>0" },
  {
    said: calc(text, "~{heaviest|0}", "Heaviest stone", { reader: "crew" }),
    placed: calc(
      text,
      // rounded to tenths of a ton, a small place would weigh less than its largest stone
      'IF(tons<1[ton],FIXED(tons/1[‹lb|kg›],0)&" ‹lb|kg›",FIXED(tons/1[‹ton|t›],1)&" ‹tons|t›")',
      "Stone to place",
      { reader: "crew" },
    ),
  },
);
