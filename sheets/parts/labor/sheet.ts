import { sheet } from "../../../engine/template/index.js";
import { laborCost, laborTotals, ownTasksInWords } from "./hours-and-cost.js";
import { inspections } from "./inspections.js";
import { siteFactors } from "./site.js";
import { ownTasks, taskTable } from "./tasks.js";

export const laborSheet = sheet(
  "Labor",
  "Hours from quantities and production rates, slowed by the site; crew, machine and days of work.",
  [siteFactors, taskTable, ownTasks, inspections, laborTotals, laborCost, ownTasksInWords],
);
