import {
  calc,
  check,
  hours,
  input,
  number,
  percent,
  published,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { countedIn, tradeUnit } from "../../tables/trade-units.js";
import type { Task } from "../task.js";

const ownList = "the list of tasks of this template";
const practice = "common practice, no source";
const ofRate = (column: string) => `PICK(used_rates.${column},used_rates.code,rate_code)`;

/** Hours of each task: its quantity over the production rate, times the factors of the site. */
export const taskTable = (tasks: readonly Task[]): TableBlock =>
  table(
    "tasks",
    "Tasks driven by the quantities",
    {
      rows: tasks.length,
      data: tasks.map(({ stage: _, quantity: __, rate: { code, counts }, ...rest }) => ({
        ...rest,
        unit: tradeUnit(counts),
        rate_code: code,
      })),
      note: "Rates are units an hour of one person. Another rate for this job goes in its own column.",
    },
    {
      task: published(text, "Task", { source: ownList }),
      quantity: calc(
        number,
        (row) => {
          const { quantity, rate } = tasks[row - 1] as Task;
          return countedIn(quantity, rate.counts);
        },
        "Quantity",
      ),
      unit: published(text, "Unit", { source: ownList }),
      rate_code: published(text, "Rate", { source: ownList }),
      override_rate: input(number, "Another rate for this job", { optional: true, least: 0.001 }),
      rate: calc(
        number,
        `IF(ISBLANK(override_rate),${ofRate("value")},override_rate)`,
        "Units an hour",
        {
          decimals: 3,
        },
      ),
      by_access: published(yesno, "Slowed by the way", { source: practice }),
      by_haul: published(yesno, "Slowed by the distance", { source: practice }),
      by_soil: published(yesno, "Slowed by the soil", { source: practice }),
      open_dig: published(yesno, "A dig stands open", { source: practice }),
      site_factor: calc(
        number,
        "IF(by_access,access_factor,1)*IF(by_haul,haul_factor,1)*IF(by_soil,soil_factor,1)",
        "Time factor",
      ),
      hours: calc(
        hours,
        "IF(rate>0,quantity/MAX(rate,0.000001)*site_factor,0)*1[h]",
        "Labor hours",
      ),
      machine_share: input(percent, "Share of them in the machine", {
        least: 0,
        most: 1,
        decimals: 0,
      }),
      machine: calc(hours, "hours*machine_share", "Machine hours"),
      rate_right: check(
        "OR(quantity<=0,rate>0)",
        "{task}: the rate {rate_code} is missing or zero, so its hours are not in the bid. Put it into the price book.",
        { label: "Has a rate" },
      ),
    },
  );

/** Work that no quantity drives. */
export const ownTasks = table(
  "additional_tasks",
  "Further tasks of this job",
  { rows: 6, filled: "hours>0" },
  {
    task: input(text, "Task"),
    hours: input(hours, "Labor hours", { least: 0, most: 2000 }),
    machine: input(hours, "of these in the machine", { optional: true, least: 0, most: 2000 }),
    fits: check("machine<=hours", "{task}: more machine hours than labor hours.", {
      label: "Machine hours fit",
    }),
  },
);
