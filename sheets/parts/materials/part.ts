import { materialFormulas } from "../../vocabulary/materials.js";
import { part } from "../part.js";
import { jobQuotes } from "./job-quotes.js";
import { bulkLines, materialLines } from "./lines.js";
import { bulkLoads, extraLines, materialsTotals, taxes } from "./tables.js";

export const materials = part("Materials", "All that is bought, in whole packs and with tax.", {
  blocks: { Materials: [materialLines, extraLines, materialsTotals, bulkLoads, bulkLines, jobQuotes, taxes] },
  formulas: materialFormulas,
  office: ["materials.waste", "taxes", "job_quotes"],
});
