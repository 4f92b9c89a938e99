import { unprinted } from "../../../engine/template/index.js";
import { bullet, bulletEachRow, eachRow } from "../../plan/page-line.js";
import { handFilling } from "../../tables/hand-work.js";
import { part } from "../part.js";
import { production, withMachine } from "../rates.js";
import { task } from "../task.js";
import { bermLines, bermTable } from "./berms.js";

export const berms = part("Berms", "Mounds of soil that give the stream its height.", {
  blocks: { Earthwork: [unprinted(bermTable), unprinted(bermLines)] },
  adds: { stripped: "SUM(berms.footprint)", covered: "SUM(berms.footprint)" },
  tasks: [
    task(
      "Build the berm",
      "berms",
      "berm_volume",
      withMachine(
        production("berm", "Place and compact the berm", "yd³", 1.8),
        0.5,
        production("berm-hand", "Rake and compact the berm, soil wheeled in", "yd³", 1.3, { band: handFilling }),
      ),
      ["by_access", "by_haul", "wheeled"],
    ),
  ],
  crew: [
    ...eachRow(
      "stop: berms",
      bermTable,
      "STOP. {name}: a side at {steepest|1} to 1 is steeper than this soil stands, {fill_slope|1} to 1. Flatten it, or wait for a wall or a design that holds it.",
      { when: "NOT(stands)" },
    ),
    ...bulletEachRow("step: berms", bermLines, "{said}.", { when: "LEN(said)>0" }),
    bullet(
      "step: berms",
      "Build the berm in thin layers, each compacted before the next; no topsoil, sod or roots in it. Walls that hold it stand first.",
      "berm_volume>0",
    ),
  ],
  proposal: bulletEachRow("scope", bermTable, "{name}: a mound of soil about {height} high."),
});
