import { calc, count, length, type TableBlock, table, text } from "../../../engine/template/index.js";
import { fallsTable } from "./falls-table.js";

/** How much a lip stands above the lowest of its level, for the crew. */
export const lipSaid: TableBlock = table(
  "lip_said",
  "Lips of one level",
  { rows: fallsTable.rows, beside: "falls", filled: "width_counted>0" },
  {
    lip_stones: calc(
      count,
      "IF(lip_built<=0,0,IF(lip_stone_longest>0,WHOLE_UP(lip_built/MAX(0.5[ft],lip_stone_longest)),1))",
      "Stones of the lip",
      {
        working: true,
        note: "As few as the longest lip stone allows; one where that is not known, the heaviest it can be.",
      },
    ),
    lip_stone: calc(length, "IF(lip_stones>0,lip_built/lip_stones,0)", "Length of a lip stone", { working: true }),
    lip: calc(text, "~{lip_across}, {lip_type}, ", "Lip", { reader: "crew" }),
    each: calc(text, "~{lip_stone|up}", "Each of its stones", { reader: "crew" }),
    stones: calc(
      text,
      'IF(lip_stones>1,FIXED(lip_stones,0)&" stones of "&each&", butted, their joint foamed",IF(lip_stone_longest>0,"one stone","no stone listed"))',
      "Stones of the lip",
    ),
    rise: calc(text, "~{lip_raised}", "Above the lowest lip", { reader: "crew" }),
    raised: calc(
      text,
      'IF(lips_beside=0,"",IF(ROUND(lip_raised/0.125[in],0)=0,"; the lowest","; "&rise&" above the lowest")&" of level "&FIXED(level,0))',
      "Beside other lips",
    ),
  },
);
