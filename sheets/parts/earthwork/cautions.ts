import { paragraphs } from "../../../engine/template/index.js";

export const groundCautions = paragraphs(
  "Cautions",
  "Call 811 before any digging, two to three working days ahead as the state's law says. Wait for the marks, and dig by hand near them. Private lines (yard lighting, sprinklers, gas to a grill) are not marked by anyone: ask the owner.",
  "A competent person looks at every dig each day before work and after every rain, and decides on soil, slope and shoring; this sheet only counts. Vibration, water and loads near the edge make any soil worse.",
  "No soil on trunks, no machine and no heap over roots. Roots thicker than a thumb are cut clean, if at all; an arborist should say which trees can stand the work.",
  "Walls over the height of the local code, and any wall with a load behind it, need a permit and an engineer. Water behind a wall is what pushes it over: drain it.",
);
