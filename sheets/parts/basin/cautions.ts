import { paragraphs } from "../../../engine/template/index.js";

export const basinCautions = paragraphs(
  "Cautions",
  "Drinking water: basin water must never be drawn back into the supply. Keep an air gap of twice the bore of the fill line, or a listed backflow preventer. The local plumbing code and a licensed plumber decide; a permit may be needed.",
  "Standing water: a few ‹inches|centimeters› can drown a child. Keep the water below the stone, keep lids on vaults fastened, and ask the local authority what it counts as a pool.",
  "Electricity and water: pump circuits in a basin belong to a licensed electrician, under the local electrical code, with ground-fault protection.",
  "Overflow: rain beyond the design storm will come. Give it a way out that harms nobody, and keep it off neighboring land.",
);
