import { type Block, calc, head, lines, paragraphs, percent } from "../../../engine/template/index.js";
import { networkBlocks } from "./network.js";

/** What the network really does: all valves open at full speed, and at the valve settings. */
export const balanceBlocks: readonly Block[] = [
  lines("States compared", {
    open_speed: calc(percent, "1", "Speed, all valves open"),
    actual_speed: calc(percent, "pump_speed", "Pump speed"),
    manifold_head: calc(head, "actual_manifold", "Manifold head", {
      strong: true,
    }),
  }),
  ...networkBlocks({
    prefix: "open",
    title: "Valves open",
    speed: "open_speed",
    local: "local_open",
    stands: "height",
  }),
  ...networkBlocks({
    prefix: "actual",
    title: "Actual",
    speed: "actual_speed",
    local: "local_actual",
    stands: "IF(shut,1000000[ft],height)",
  }),
  paragraphs(
    "Method",
    "The outlets' flow rises with the head at the manifold; the head that the pump leaves there falls with the flow. Where the two meet is found by trial in the tables: heights of the outlets first, since an outlet starts to run there, then ten passes between them.",
    "Past the last point of the pump's curve its last line goes on; before the first, its first line is carried back.",
  ),
];
