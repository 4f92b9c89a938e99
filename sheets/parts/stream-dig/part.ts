import { unprinted } from "../../../engine/template/index.js";
import { bullet, bulletEachRow } from "../../plan/page-line.js";
import { part } from "../part.js";
import { dugByStream, streamPlaces, streamProtection, strippedByStream } from "./cells.js";
import { channelCuts, poolCuts } from "./cuts.js";
import { runsCounted, runsTold } from "./runs-told.js";

export const streamDig = part("Dig of the stream", "Runs and pools as they are dug, with room for stone.", {
  blocks: { Earthwork: [unprinted(channelCuts), unprinted(poolCuts)], "Drawing points": runsCounted },
  adds: {
    stripped: "stream_ground",
    dug: ["channel_dig", "pool_dig"],
    topsoil: "(SUM(channel_cuts.topsoil)+SUM(pool_cuts.topsoil))*(1-stream_on_berms)",
    refilled: "pool_backfill",
  },
  cells: { stripped: strippedByStream, dug: dugByStream, "dig safety": streamProtection },
  digs: streamPlaces,
  crewDrawings: runsTold,
  crew: [
    ...bulletEachRow(
      "step: dig",
      poolCuts,
      "{pool}: dig {deepest|up} deep, {box_length|up} by {box_width|up} at the bottom.",
      { when: "deepest>0" },
    ),
    bullet(
      "step: dig",
      "Stream and pools are dug {bed_stone_depth} deeper than they finish: the stone of the bed lies on the liner.",
      "SUM(channel_cuts.deepest)+SUM(pool_cuts.deepest)>0",
    ),
  ],
});
