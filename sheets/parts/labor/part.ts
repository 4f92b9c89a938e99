import { bullet, bulletEachRow } from "../../plan/page-line.js";
import { laborFormulas } from "../../vocabulary/labor.js";
import { part } from "../part.js";
import { production, withMachine } from "../rates.js";
import { task } from "../task.js";
import { laborCost, laborTotals, ownTasksInWords } from "./hours-and-cost.js";
import { inspections } from "./inspections.js";
import { laborRates } from "./rates.js";
import { siteFactors } from "./site.js";
import { ownTasks, taskTable } from "./tasks.js";

export const labor = part("Labor", "Hours from the tasks of all parts, slowed by the site; what they cost.", {
  blocks: {
    Labor: [
      siteFactors,
      ({ tasks }) => taskTable(tasks),
      ownTasks,
      inspections,
      laborTotals,
      laborCost,
      ownTasksInWords,
    ],
  },
  formulas: laborFormulas,
  rates: laborRates,
  tasks: [
    task(
      "Set out and protect the site",
      "set out",
      "1",
      production("set-out", "Set out, mark utilities, protect the site", "each", 0.12),
    ),
    task(
      "Clean up and hand over",
      "hand over",
      "1",
      withMachine(production("clean-up", "Clean up, hand over", "each", 0.1), 0.2),
    ),
  ],
  crew: ({ tasks }) => [
    ...bulletEachRow("hours", taskTable(tasks), "{task}: {hours|1}", { when: "hours>0" }),
    ...bulletEachRow("hours", ownTasks, "{task}: {hours|1}"),
    bullet(
      "hours",
      "Inspect the digs, each day before work and after every rain: {inspection_hours|1}",
      "inspection_hours>0",
    ),
    bullet("hours", "Set-up and clean-up each day, and travel: {daily_hours|1}", "daily_hours>0"),
  ],
  office: ["crew_size", "shift_hours", "pay_whole_days", "tasks", "additional_tasks"],
});
