import {
  calc,
  count,
  hours,
  input,
  lines,
  number,
  published,
  type TableBlock,
  table,
  text,
} from "../../../engine/template/index.js";
import { tradeUnit } from "../../tables/trade-units.js";
import { capacity } from "../capacity.js";
import type { Task } from "../task.js";
import { toldOrNot } from "./told.js";

const source = "the list of tasks of this template";
const given = { optional: true, least: 0 } as const;
const hoursGiven = { ...given, most: 5000 } as const;

/** The tasks of the bid, each with room for what it took. */
export const builtTasks = (tasks: readonly Task[]): TableBlock =>
  table(
    "built_tasks",
    "Tasks of the bid",
    {
      shown: "planned>0",
      rows: tasks.length,
      beside: "tasks",
      data: tasks.map(({ task, ways }) => ({ task, unit: tradeUnit(ways.rate.counts) })),
      note: "Where hours and quantity are both given, the job tells a rate. A zero was given; a blank was not.",
    },
    {
      task: published(text, "Task", { source }),
      planned: calc(number, "quantity", "Planned"),
      unit: published(text, "Unit", { source }),
      hours_planned: calc(hours, "hours", "Man-hours planned"),
      quantity_done: input(number, "Quantity done", { ...given, most: 1e6 }),
      hours_taken: input(hours, "Man-hours taken", hoursGiven),
      machine_taken: input(hours, "Machine hours taken", hoursGiven),
      note: input(text, "Note", { optional: true }),
      told: calc(
        text,
        'IF(ISBLANK(hours_taken),IF(ISBLANK(quantity_done),"","quantity"),IF(ISBLANK(quantity_done),"hours","both"))',
        "Told",
        { working: true },
      ),
    },
  );

/** The same of tasks that the bid added by hand. */
export const builtAdditional = table(
  "built_additional",
  "Additional tasks of the bid",
  { rows: capacity.additionalTasks, beside: "additional_tasks", shown: "hours_planned>0" },
  {
    additional_task: calc(text, "task", "Task"),
    hours_planned: calc(hours, "hours", "Man-hours planned"),
    hours_taken: input(hours, "Man-hours taken", hoursGiven),
    told: calc(count, "IF(ISBLANK(hours_taken),0,1)", "Told", toldOrNot),
  },
);

/** Work that nobody planned. */
export const builtOthers = table(
  "built_others",
  "Work not planned",
  { rows: capacity.additionalTasks, filled: "hours_taken>0" },
  {
    task: input(text, "Task", { optional: true }),
    hours_taken: input(hours, "Man-hours taken", hoursGiven),
    why: input(text, "Why", { optional: true }),
  },
);

/** Hours that no task of the list holds, and how much was typed in all. */
export const builtHours = lines("Other hours", {
  daily_hours_taken: input(hours, "Set-up, clean-up and travel", {
    ...hoursGiven,
    note: "Man-hours of the whole crew, all days.",
  }),
  inspection_hours_taken: input(hours, "Inspections of the digs", hoursGiven),
  built_hours_told: calc(
    count,
    'SUMPRODUCT((built_tasks.told="hours")*1+(built_tasks.told="both")*1)+SUM(built_additional.told)+SUMPRODUCT((built_others.hours_taken>0)*1)',
    "Tasks with hours",
  ),
  built_half_told: calc(
    count,
    'SUMPRODUCT((built_tasks.told="hours")*1+(built_tasks.told="quantity")*1)',
    "Tasks told by half",
  ),
  built_words_told: calc(
    count,
    'SUMPRODUCT((built_tasks.note<>"")*1)+SUMPRODUCT((built_others.task<>"")*1)+SUMPRODUCT((built_others.why<>"")*1)',
    "Notes",
  ),
});
