import { bullet, bulletEachRow } from "../page-line.js";
import { part } from "../part.js";
import { production } from "../rates.js";
import { task } from "../task.js";
import { trenchLines, trenchTable, trenchWords } from "./trenches.js";

export const trench = part("Trenches", "The trenches of pipes and conduit, dug and filled again.", {
  blocks: { Earthwork: [trenchLines, trenchTable, trenchWords] },
  buys: {
    Earthwork: [
      {
        what: "bedding of the trenches",
        code: "bedding_code",
        wanted: "trench_bedding",
        unit: "yd3",
        byLoad: true,
        waste: 0.05,
      },
    ],
  },
  tasks: [
    task(
      "Dig the pipe trench, fill it after the pipe",
      "trenches",
      "trench_effort",
      production("trench", "Dig and fill the pipe trench", "yd3"),
      ["open_dig", "by_access", "by_soil"],
      0.4,
    ),
    task(
      "Dig narrow trenches, fill them after the pipe",
      "trenches",
      "narrow_effort",
      production("trench-narrow", "Dig and fill a narrow trench by hand", "yd3"),
      ["open_dig", "by_access", "by_soil"],
      0.2,
    ),
    task(
      "Spread bedding of basin and trenches",
      "trenches",
      "bedding_volume+trench_bedding",
      production("bedding-laid", "Spread bedding", "yd3"),
      ["open_dig", "by_access", "by_haul"],
    ),
  ],
  crew: [
    ...bulletEachRow("dig trenches", trenchWords, "{said}", { when: "LEN(said)>0" }),
    bullet("backfill", "Fill the trenches in thin layers, once the pipes have held water.", "trench_volume>0"),
  ],
});
