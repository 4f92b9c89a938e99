import {
  calc,
  check,
  decide,
  hours,
  input,
  number,
  office,
  percent,
  published,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { countedIn, tradeUnit } from "../../tables/trade-units.js";
import { capacity } from "../capacity.js";
import type { Task } from "../task.js";

const ownList = "the list of tasks of this template";
const practice = "common practice, no source";
const ofRate = (column: string) => `PICK(used_rates.${column},used_rates.code,rate_code)`;

/** Hours of each task: its quantity over the production rate, times the factors of the site. */
export const taskTable = (tasks: readonly Task[]): TableBlock =>
  table(
    "tasks",
    "Tasks",
    {
      rows: tasks.length,
      data: tasks.map(({ stage: _, quantity: __, rate: { code, counts }, ...rest }) => ({
        ...rest,
        unit: tradeUnit(counts),
        rate_code: code,
      })),
      note: "Rates are units per man-hour. A rate for this job alone goes in Override rate.",
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
      override_rate: input(number, "Override rate", { optional: true, least: 0.001 }),
      rate: calc(number, `IF(ISBLANK(override_rate),${ofRate("value")},override_rate)`, "Units an hour", {
        decimals: 3,
      }),
      by_access: published(yesno, "Slowed by access", { source: practice }),
      by_haul: published(yesno, "Slowed by hauling", { source: practice }),
      by_soil: published(yesno, "Slowed by soil", { source: practice }),
      open_dig: published(yesno, "With a dig open", { source: practice }),
      site_factor: calc(
        number,
        "IF(by_access,access_factor,1)*IF(by_haul,haul_factor,1)*IF(by_soil,soil_factor,1)",
        "Time factor",
      ),
      hours: calc(hours, "IF(rate>0,quantity/MAX(rate,0.000001)*site_factor,0)*1[h]", "Man-hours"),
      machine_share: office(percent, "Machine share", {
        least: 0,
        most: 1,
        decimals: 0,
      }),
      machine: calc(hours, "hours*machine_share", "Machine hours"),
      rate_right: check(
        "OR(quantity<=0,rate>0)",
        "{task}: the rate {rate_code} is missing or zero, so its hours are not in the bid. Enter it on sheet Rates of the office book.",
        { label: "Production rate missing" },
      ),
    },
  );

/** Work that no quantity drives. */
export const ownTasks = table(
  "additional_tasks",
  "Additional tasks",
  { rows: capacity.additionalTasks, filled: "hours>0" },
  {
    task: decide(text, "Task"),
    hours: decide(hours, "Man-hours", { least: 0, most: 2000 }),
    machine: decide(hours, "Machine hours", { optional: true, least: 0, most: 2000 }),
    fits: check(
      "machine<=hours",
      "{task}: more machine hours than man-hours. Lower its machine hours in additional_tasks on sheet Labor.",
      {
        label: "Machine hours over man-hours",
      },
    ),
  },
);
