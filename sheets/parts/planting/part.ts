import { unprinted } from "../../../engine/template/index.js";
import { bullet, under } from "../../plan/page-line.js";
import { part } from "../part.js";
import { production } from "../rates.js";
import { task } from "../task.js";
import { planting as plantingBlock } from "./planting.js";

/** Lawn, beds and plants after the work, each a line of its own. */
export const planting = part("Planting", "What the work leaves behind: lawn, beds, plants and topsoil.", {
  section: "Lawn and planting",
  blocks: { Earthwork: [(all) => unprinted(plantingBlock(all))] },
  takeoff: [
    // seed and straw together: what a square foot of repair takes
    { what: "lawn seed with straw mulch", code: "lawn-seed", wanted: "lawn_area", unit: "ft²", waste: 0.1 },
    { what: "plants", code: "plant", wanted: "plants_wanted", unit: "each" },
    { what: "bark mulch", code: "bark-mulch", wanted: "bark_volume", unit: "yd³", waste: 0.05 },
    { what: "topsoil brought in", code: "topsoil", wanted: "topsoil_import", unit: "yd³", waste: 0.05 },
  ],
  tasks: [
    task(
      "Spread topsoil brought in",
      "topsoil",
      "topsoil_import",
      production("topsoil-spread", "Barrow and rake out topsoil brought in", "yd³", 1.2),
      ["by_haul"],
    ),
    task(
      "Rake, seed and mulch lawn",
      "topsoil",
      "lawn_area",
      production("lawn-seeded", "Rake, seed and mulch lawn", "ft²", 250),
    ),
    task("Set plants", "topsoil", "plants_wanted", production("plant-set", "Set a plant and water it in", "each", 5)),
    task(
      "Spread bark mulch",
      "topsoil",
      "bark_volume",
      production("bark-spread", "Barrow and spread bark mulch", "yd³", 0.9),
      ["by_haul"],
    ),
  ],
  crew: [
    ...under(
      "Rake, seed and mulch lawn",
      bullet("step: topsoil", "Lawn: rake, seed and mulch {lawn_area|0}.", "lawn_area>0"),
    ),
    bullet(
      "step: topsoil",
      "Plants: {plants_wanted|0}; bed of {planting_bed|0}, bark {bark_depth|0} deep.",
      "plants_wanted+planting_bed/1[ft²]>0",
    ),
  ],
  proposal: [
    bullet(
      "protection",
      "Lawn that the work has worn, about {lawn_about|0}, raked, seeded and mulched.",
      "lawn_area>0",
    ),
    bullet("protection", "Plants: {plants_wanted|0}, set and watered in.", "plants_wanted>0"),
  ],
  told: ["lawn_share", "plants_wanted", "planting_bed"],
});
