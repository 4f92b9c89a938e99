import { paragraphs, sheet } from "../../../engine/template/index.js";
import { wireTable } from "../../tables/wires.js";
import { lights } from "../lights/lights.js";
import { circuit } from "./circuit.js";
import { electricWork } from "./work.js";

/** The circuit that feeds pump and lights: who does it, its load, its wire, its hours. */
export const electricSheet = sheet(
  "Electric",
  "The circuit of pump and lights: load, breaker, wire, voltage drop; who does it, and what of it is in the price.",
  [
    electricWork,
    circuit,
    lights,
    paragraphs(
      "Cautions",
      "These figures are for the estimate. A licensed electrician sizes and does the work, under the code in force on site and the pump's own instructions; a permit and an inspection may be needed.",
      "Water and electricity: ground-fault protection, no splices under water, power off and locked while hands are in the basin. The bonding of metal parts is not counted here.",
    ),
    wireTable,
  ],
);
