import { step, stepEachRow } from "../../plan/crew-page.js";
import { bullet, under } from "../../plan/page-line.js";
import { laborFormulas } from "../../vocabulary/labor.js";
import { part } from "../part.js";
import { production, withMachine } from "../rates.js";
import { type Task, task } from "../task.js";
import { laborCost, laborTotals, ownTasksInWords } from "./hours-and-cost.js";
import { inspections } from "./inspections.js";
import { laborRates } from "./rates.js";
import { siteFactors } from "./site.js";
import { ownTasks, taskTable } from "./tasks.js";

export const labor = part("Labor", "Hours from the tasks of all parts, slowed by the site; what they cost.", {
  blocks: {
    Labor: [
      // the tasks first, so that their headings stay in sight
      ({ tasks }) => taskTable(tasks),
      ownTasks,
      siteFactors,
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
    ...stepEachRow("hours", taskTable(tasks), "{task}: {hours|1|bare}\u00a0h", { when: "hours>0" }).map((said, i) => {
      const { stage, task } = tasks[i] as Task;
      return { ...said, section: `do: ${stage}` as const, task };
    }),
    ...under(
      "Set out and protect the site",
      bullet("step: set out", "Benchmark first: the basin's rim. {stakes_said}; keep the stakes."),
    ),
    ...under(
      "Clean up and hand over",
      bullet(
        "step: hand over",
        "Rinse stone and vault, rake the ways, take photos; hand-over sheet with the customer.",
      ),
    ),
    ...stepEachRow("hours", ownTasks, "{task}: {hours|1|bare}\u00a0h"),
    step("hours", "Each day, inspect digs: {inspection_hours|1|bare}\u00a0h", "inspection_hours>0"),
    bullet("hours", "Before work and after every rain; hours of the whole job.", "inspection_hours>0"),
    step("hours", "Daily set-up, travel: {daily_hours|1|bare}\u00a0h", "daily_hours>0"),
    bullet("hours", "Clean up each evening; hours of the whole job.", "daily_hours>0"),
  ],
  office: ["crew_size", "shift_hours", "pay_whole_days", "tasks", "additional_tasks"],
});
