import { sheet } from "../engine/template/index.js";
import { laborCost, laborTotals, ownTasksInWords } from "./labor/hours-and-cost.js";
import { inspections } from "./labor/inspections.js";
import { siteFactors } from "./labor/site.js";
import { ownTasks, taskTable } from "./labor/tasks.js";

export const laborSheet = sheet(
  "Labor",
  "Hours from quantities and production rates, slowed by the site; crew, machine and days of work.",
  [siteFactors, taskTable, ownTasks, inspections, laborTotals, laborCost, ownTasksInWords],
);
