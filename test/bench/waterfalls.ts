import { templates } from "../../sheets/templates/index.js";
import type { Subject } from "./bench.js";

/** The trade of this repository, and the largest of its demos. */
export const waterfalls: Subject = {
  templates,
  job: "hillside-stream.json",
  ranged: [
    ...["main_length", "basin_depth", "basin_length"],
    ...["strip_depth", "contingency_share", "crew_size"],
  ],
  change: "crew_size=4",
};
