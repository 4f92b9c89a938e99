import { paragraphs } from "../../../engine/template/index.js";
import type { Lined } from "./lined.js";

export const linerCautions = (lined: Lined) =>
  paragraphs(
    "Cautions",
    "Measure the finished dig again with a tape laid along the ground, over every edge, before anything is cut: the ground decides, not this sheet.",
    `Seams leak first.${lined === "course" ? " Place them away from landings of falls, clean" : " Clean"} and prime as the maker of the tape says, and test by filling before stone covers them.`,
    ...(lined === "course"
      ? [
          "At a fall the upper sheet always lies over the lower one, and the edges stay above the running water on both banks.",
        ]
      : []),
  );
