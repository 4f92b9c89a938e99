import { bullet, line, under } from "../../plan/page-line.js";
import { part } from "../part.js";
import { production } from "../rates.js";
import { task } from "../task.js";
import { clarifier as clarifierBlock } from "./clarifier.js";

export const clarifier = part("Clarifier", "An ultraviolet lamp in the main, against green water.", {
  blocks: { Piping: [clarifierBlock] },
  adds: {
    "main loss": "clarifier_local",
    "running power": "clarifier_load",
    "circuit current": "IF(supply_voltage>0,clarifier_load/supply_voltage,0)",
  },
  takeoff: [
    {
      what: "ultraviolet clarifier",
      code: "uv-clarifier",
      wanted: "IF(clarifier_included,1,0)",
      unit: "each",
      placeholder: 300,
    },
  ],
  tasks: [
    task(
      "Fit the clarifier",
      "pipe",
      "IF(clarifier_included,1,0)",
      production("clarifier-fitted", "Fit an ultraviolet clarifier", "each", 0.5),
    ),
  ],
  crew: [
    ...under(
      "Fit the clarifier",
      bullet(
        "step: main",
        "Clarifier in the main, {clarifier_watts|0}, for at most {clarifier_flow_limit|down}: on a dry base, with unions on both sides. Its lamp never burns dry.",
        "clarifier_included",
      ),
    ),
    bullet(
      "caution: power",
      "The clarifier's light harms eyes and skin: power off before it is opened.",
      "clarifier_included",
    ),
  ],
  proposal: [
    bullet("supply", "An ultraviolet clarifier against green water.", "clarifier_included"),
    line(
      "running",
      "The clarifier draws {clarifier_watts|0}, which is in that cost. Its lamp is changed as its maker says; switch it off before it is opened, since its light harms eyes and skin.",
      "clarifier_included",
    ),
  ],
  told: ["clarifier_included"],
});
