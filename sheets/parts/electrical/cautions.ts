import { paragraphs } from "../../../engine/template/index.js";

export const electricCautions = paragraphs(
  "Cautions",
  "These figures are for the estimate. A licensed electrician sizes and does the work, under the code in force on site and the pump's own instructions; a permit and an inspection may be needed.",
  "Water and electricity: ground-fault protection, no splices under water, power off and locked while hands are in the basin. The bonding of metal parts is not counted here.",
);
