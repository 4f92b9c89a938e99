import { paragraphs } from "../../../engine/template/index.js";

export const stoneCautions = paragraphs(
  "Cautions",
  "Nobody stands under or beside a hanging stone. Rigging is inspected each day, rated for the load, and chosen by someone trained for it; the machine's own chart and manual come before this sheet.",
  "Stacked stone leans: set large stones on firm ground, tilted back into the bank, each resting on two below. A wall over the height of the local code needs a permit and an engineer.",
  "Weigh tickets of the first loads tell the true density: put them in and look again at what is still to come.",
);
