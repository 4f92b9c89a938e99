import { part } from "../part.js";
import { channelCuts, poolCuts } from "./cuts.js";

export const streamDig = part(
  "Dig of the stream",
  "Runs and pools as they are dug, with room for stone.",
  {
    blocks: { Earthwork: [channelCuts, poolCuts] },
  },
);
