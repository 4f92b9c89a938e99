import { bulletEachRow, eachRow } from "../../plan/page-line.js";
import { part } from "../part.js";
import { treeLines, treeRules, treeTable } from "./trees.js";

export const trees = part("Trees", "Trees that stay: what their roots bear.", {
  blocks: { Earthwork: [treeRules, treeTable, treeLines] },
  crew: [
    ...eachRow(
      "stop: trees",
      treeTable,
      "STOP. {name}: {fill_planned|up} of fill is planned, {fill_allowed|down} is allowed. No fill there before a wall holds it.",
      { when: "NOT(kept)" },
    ),
    ...bulletEachRow("trees", treeLines, "{said}.", { when: "LEN(said)>0" }),
  ],
  proposal: bulletEachRow("trees", treeTable, "We protect this tree: {name}."),
});
