import { unprinted } from "../../../engine/template/index.js";
import { varianceFormulas } from "../../vocabulary/variance.js";
import { part } from "../part.js";
import { builtHires, builtInvoices, builtMoney, builtSubcontracts, invoiceSums, suppliersSaid } from "./bought.js";
import { effectSizes, largestEffects, stageHours, taskEffects } from "./effects.js";
import { builtGiven } from "./given.js";
import {
  costEffects,
  costSizes,
  costTotal,
  hoursBack,
  hoursParts,
  laborBack,
  lookBackHead,
  lookBackParts,
  marginBack,
  stageChart,
} from "./look-back.js";
import { lineReadings, meterWorkings, waterBack } from "./readings.js";
import { jobState, stateChecks } from "./state.js";
import { builtAdditional, builtHours, builtOthers, builtTasks } from "./tasks.js";
import { builtLines, builtWater } from "./water.js";

export const built = part("Built", "What the job really took, beside what was planned.", {
  formulas: varianceFormulas,
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
      ({ metered }) => metered,
      builtWater,
      (all) => unprinted(builtGiven(all)),
      stateChecks,
      unprinted(invoiceSums),
    ],
    "Look back": [
      lookBackHead,
      costEffects,
      costTotal,
      marginBack,
      hoursBack,
      stageChart,
      ({ tasks }) => taskEffects(tasks),
      lineReadings,
      ({ readings }) => readings,
      waterBack,
      unprinted(stageHours),
      unprinted(largestEffects),
      unprinted(laborBack),
      unprinted(costSizes),
      unprinted(meterWorkings),
      unprinted(lookBackParts),
      unprinted(hoursParts),
      ({ tasks }) => unprinted(effectSizes(tasks)),
    ],
  },
});
