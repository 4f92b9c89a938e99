import { line } from "../page-line.js";
import { part } from "../part.js";
import { hire } from "../rates.js";
import { access as accessBlock } from "./access.js";

export const access = part("Access", "Mats under machines, over lawn and roots.", {
  blocks: { Earthwork: [accessBlock] },
  rates: [hire("mat", "Ground mat for the job", "$/each")],
  crew: [line("before", "Ground mats: {ground_mats|0}.", "ground_mats>0")],
});
