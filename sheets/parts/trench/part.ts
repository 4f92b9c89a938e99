import { unprinted } from "../../../engine/template/index.js";
import { step } from "../../plan/crew-page.js";
import { bullet, bulletEachRow, under } from "../../plan/page-line.js";
import { item } from "../goods.js";
import { part } from "../part.js";
import { production, withMachine } from "../rates.js";
import { task } from "../task.js";
import { pipeTrenches, trenchLines, trenchTable, trenchWords } from "./trenches.js";

/** Dug and filled again: the sum of both, by the sources of hand work, is 0.40 yd³ an hour in common earth. */
const trenchByHand = production("trench-narrow", "Dig and fill a trench by hand", "yd³", 0.35);

const pipeTask = "Dig the pipe trench, hours with filling";
const narrowTask = "Dig narrow trenches, hours with filling";

const beddingTask = "Spread bedding of basin and trenches";

/** Its hours are in those of the digs. */
const fillTask = "Fill the trenches";

export const trench = part("Trenches", "The trenches of pipes and conduit, dug and filled again.", {
  blocks: { Earthwork: [(all) => unprinted(trenchLines(all)), trenchTable, trenchWords] },
  buys: {
    Earthwork: [
      // of one pile, so that it is rounded up to what is sold once
      {
        what: "bedding sand",
        code: "bedding_code",
        wanted: "bedding_volume+trench_bedding",
        unit: "yd³",
        byLoad: true,
        waste: 0.05,
      },
    ],
  },
  items: [item("sand-bedding", "bedding sand", "yd³")],
  tasks: [
    task(
      pipeTask,
      "trenches",
      "trench_effort",
      withMachine(production("trench", "Dig and fill the pipe trench", "yd³", 0.67), 0.4, trenchByHand),
      ["open_dig", "by_access", "by_soil"],
    ),
    task(narrowTask, "trenches", "narrow_effort", trenchByHand, ["open_dig", "by_soil"]),
    task(
      beddingTask,
      "trenches",
      "bedding_volume+trench_bedding",
      production("bedding-laid", "Spread bedding", "yd³", 1.2),
      ["open_dig", "by_access", "by_haul"],
    ),
  ],
  trenches: pipeTrenches,
  crew: (all) => [
    ...bulletEachRow("step: trenches", trenchWords(all), "{said}", { when: "LEN(said)>0" }).map((said, row) => ({
      ...said,
      under: all.trenches[row]?.kind === "narrow" ? narrowTask : pipeTask,
    })),
    ...under(
      beddingTask,
      bullet(
        "step: trenches",
        "Basin: {basin_bedding|0|up} under the liner, {bedding_volume|1}. Pipe trenches as listed: {trench_bedding|1}.",
        "bedding_volume+trench_bedding>0",
      ),
    ),
    // where nobody measured, the office stakes: a place is never made up
    bullet(
      "step: main",
      "Bulkhead of the main: through the liner, its bottom about {main_depth|0} below the ground there, on the side staked with the office; filled and looked at before it is covered.",
      "trench_length>0",
    ),
    bullet(
      "step: main",
      "Manifold: at the end of the main, {main_length} long, as deep{manifold_place}; with the valve box as staked with the office.",
      "trench_length>0",
    ),
    {
      ...step("do: backfill", "Fill the trenches (hours: dig)", "trench_volume>0"),
      task: fillTask,
    },
    ...under(
      fillTask,
      bullet(
        "step: backfill",
        "In thin layers, once the pipes have held water and the conduit is in; no stone against a pipe.",
        "trench_volume>0",
      ),
    ),
  ],
});
