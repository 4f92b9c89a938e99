import {
  type Block,
  calc,
  head,
  lines,
  paragraphs,
  percent,
} from "../../../engine/template/index.js";
import { networkBlocks } from "./network.js";

/** What the network really does: all valves open at full speed, and as set. */
export const balanceBlocks: readonly Block[] = [
  lines("The two states", {
    open_speed: calc(percent, "1", "Speed, all valves open"),
    actual_speed: calc(percent, "pump_speed", "Speed, as set"),
    manifold_head: calc(head, "actual_manifold", "Head at the manifold, as set", {
      strong: true,
    }),
  }),
  ...networkBlocks({
    prefix: "open",
    title: "All open",
    speed: "open_speed",
    local: "local_open",
    stands: "height",
  }),
  ...networkBlocks({
    prefix: "actual",
    title: "As set",
    speed: "actual_speed",
    local: "local_actual",
    stands: "IF(shut,1000000[ft],height)",
  }),
  paragraphs(
    "How",
    "The outlets' flow rises with the head at the manifold; the head that the pump leaves there falls with the flow. Where the two meet is found by trial in the tables: heights of the outlets first, since an outlet starts to run there, then ten passes between them.",
    "Past the last point of the pump's curve its last line goes on; before the first, its first line is carried back.",
  ),
];
