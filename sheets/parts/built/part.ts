import { part } from "../part.js";
import { builtHires, builtInvoices, builtMoney, builtSubcontracts, suppliersSaid } from "./bought.js";
import { builtGiven } from "./given.js";
import { jobState, stateChecks } from "./state.js";
import { builtAdditional, builtHours, builtOthers, builtTasks } from "./tasks.js";
import { builtLines, builtRuns, builtWater } from "./water.js";

export const built = part("Built", "What the job really took, beside what was planned.", {
  blocks: {
    Built: [
      jobState,
      ({ tasks }) => builtTasks(tasks),
      builtAdditional,
      builtOthers,
      builtHours,
      suppliersSaid,
      builtInvoices,
      (all) => builtHires(all),
      builtSubcontracts,
      builtMoney,
      builtLines,
      builtRuns,
      builtWater,
      builtGiven,
      stateChecks,
    ],
  },
});
