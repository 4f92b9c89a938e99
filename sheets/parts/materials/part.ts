import { part } from "../part.js";
import { takeoffLines } from "./lines.js";
import { extraLines, takeoffInputs, takeoffTotals, taxes } from "./tables.js";

export const materials = part("Materials", "All that is bought, in whole packs and with tax.", {
  blocks: { Materials: [takeoffTotals, takeoffInputs, takeoffLines, extraLines, taxes] },
  office: ["materials.waste", "taxes"],
});
