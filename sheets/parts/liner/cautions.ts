import { paragraphs } from "../../../engine/template/index.js";

export const linerCautions = paragraphs(
  "Cautions",
  "Measure the finished dig again with a tape laid along the ground, over every edge, before anything is cut: the ground decides, not this sheet.",
  "Seams leak first. Place them away from landings of falls, clean and prime as the maker of the tape says, and test by filling before stone covers them.",
  "At a fall the upper sheet always lies over the lower one, and the edges stay above the running water on both banks.",
);
