import { unprinted } from "../../../engine/template/index.js";
import { bullet, bulletEachRow } from "../../plan/page-line.js";
import { part } from "../part.js";
import { channelCuts, poolCuts } from "./cuts.js";

export const streamDig = part("Dig of the stream", "Runs and pools as they are dug, with room for stone.", {
  blocks: { Earthwork: [unprinted(channelCuts), unprinted(poolCuts)] },
  crew: [
    ...bulletEachRow(
      "step: dig",
      channelCuts,
      "{run}: where it is cut, dig {deep|up} deep from the top of the bank, {bottom|up} wide at the bottom, {top|up} at the top.",
      { when: "deepest>0" },
    ),
    ...bulletEachRow(
      "step: dig",
      poolCuts,
      "{pool}: dig {deepest|up} deep, {box_length|up} by {box_width|up} at the bottom.",
      { when: "deepest>0" },
    ),
    bullet(
      "step: dig",
      "Stream and pools are dug {bed_stone_depth|up} deeper than they finish: the stone of the bed lies on the liner.",
      "SUM(channel_cuts.deepest)+SUM(pool_cuts.deepest)>0",
    ),
  ],
});
