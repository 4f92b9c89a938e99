import { unprinted } from "../../../engine/template/index.js";
import { line } from "../../plan/page-line.js";
import { hired } from "../hire.js";
import { part } from "../part.js";
import { site } from "../rates.js";
import { access as accessBlock, accessMethod } from "./access.js";

/** As the norms grow from 20 to 100 m of way. */
const handHaul = "ILO/ASIST Technical Brief 2 (from memory): 8.5 to 5.0 m³ a day from 20 to 100 m";
const hundred = "‹100 ft|30.48 m›";

export const access = part("Access", "The way in: which machine fits, what it slows, and the mats under it.", {
  blocks: { Earthwork: [unprinted(accessBlock)] },
  below: { Labor: [accessMethod] },
  hires: [hired("Ground mats", "ground_mats", "mat", "Ground mat for the job", "$/each", 20)],
  rates: [
    site("small-machine", "Time with a small machine, over the machine's", "factor", 1.4),
    site("haul-by-machine", `More time for each ${hundred} of haul, machine`, "percent", 12),
    site("haul-by-hand", `More time for each ${hundred} of haul, by hand`, "percent", 30, handHaul),
    site("barrow-slope", "More time for each 10% of slope, by hand", "percent", 25),
    site("barrow-step", "More time for each step on the way, by hand", "percent", 5),
  ],
  crew: [line("before", "Ground mats: {ground_mats|0}.", "ground_mats>0")],
});
