import { calc, check, input, lines, tons } from "../../engine/template/index.js";
import { buysTable } from "../materials.js";
import { stoneRows } from "./classes.js";

export const stoneTotals = lines("In short", {
  stone_tons: calc(tons, "SUM(stones.tons)", "Stone in all", { strong: true }),
  faces_have_stone: check(
    'OR(SUMPRODUCT(falls.width, falls.drop) = 0[ft²], SUMIF(stones.covers, "fall faces", stones.share) > 0)',
    "There are drops, but no class of stone covers fall faces: add one, or the falls have no stone but their lips.",
    { label: "The faces of the falls have stone", level: "look" },
  ),
  truck_payload: input(tons, "A truck carries", {
    default: 15,
    least: 0.25,
    most: 40,
    note: "What the local hauler may carry on these roads.",
    source: "common practice, no source",
  }),
});

export const stoneBuys = buysTable(
  "stone_buys",
  Array.from({ length: stoneRows }, (_, i) => ({
    what: `row ${i + 1} of the classes`,
    code: `INDEX(stones.code, ${i + 1}) & ""`,
    wanted: `INDEX(stones.tons, ${i + 1}) / 1[ton]`,
    unit: "ton",
    byLoad: true,
  })),
);
