import { calc, count, text } from "../../../engine/template/index.js";
import type { Cells } from "../added.js";

const ofHeaviest = (column: string) => `INDEX(stone_places.${column},MAX(heaviest_row,1))`;

/** Which stone is the heaviest, and where it goes. */
export const heaviestStone: Cells = {
  heaviest_row: calc(count, "PLACE_OR_ZERO(stone_places.heaviest,heaviest_stone)", "Row of heaviest stone", {
    working: true,
    zero: "none",
  }),
  heaviest_said: calc(
    text,
    `IF(heaviest_row>0,${ofHeaviest("stone")}&" for "&${ofHeaviest("name")},"no stone")`,
    "Heaviest stone and its place",
    { working: true, note: "The first of the places whose stone is as heavy." },
  ),
};
