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
import { practice } from "../rates.js";
import type { Task } from "../task.js";

const ownList = "the list of tasks of this template";
/** What is known of a task's rate: that by hand, where all is done by hand. */
const ofRate = (column: string) => `PICK(used_rates.${column},used_rates.code,IF(by_hand,hand_code,machine_code))`;

/** Hours of each task: its quantity over the production rate, times the factors of the site. */
export const taskTable = (tasks: readonly Task[]): TableBlock =>
  table(
    "tasks",
    "Tasks",
    {
      shown: "quantity>0",
      rows: tasks.length,
      data: tasks.map(({ stage, quantity: _, ways: { rate, byHand, machineShare }, ...rest }) => ({
        ...rest,
        stage,
        unit: tradeUnit(rate.counts),
        machine_code: rate.code,
        hand_code: byHand.code,
        machine_share: machineShare,
      })),
      note: "In the order of building. Man-hours: quantity by units an hour, times the time factor. A rate for this job alone goes in Override rate.",
    },
    {
      task: published(text, "Task", { source: ownList }),
      quantity: calc(
        number,
        (row) => {
          const { quantity, ways } = tasks[row - 1] as Task;
          return countedIn(quantity, ways.rate.counts);
        },
        "Quantity",
      ),
      unit: published(text, "Unit", { source: ownList }),
      stage: published(text, "Stage of the work", { working: true, source: ownList }),
      machine_code: published(text, "Rate with a machine", { working: true, source: ownList }),
      hand_code: published(text, "Rate by hand", { working: true, source: ownList }),
      override_rate: input(number, "Override rate", { optional: true, least: 0.001 }),
      rate: calc(number, `IF(ISBLANK(override_rate),${ofRate("value")},override_rate)`, "Units an hour", {
        decimals: 2,
      }),
      by_access: published(yesno, "Slowed by access", { working: true, source: practice }),
      by_haul: published(yesno, "Slowed by hauling", { working: true, source: practice }),
      wheeled: published(yesno, "By hand, wheeled apart", { working: true, source: practice }),
      by_soil: published(yesno, "Slowed by soil", { working: true, source: practice }),
      open_dig: published(yesno, "With a dig open", { working: true, source: practice }),
      site_factor: calc(
        number,
        "IF(by_access,access_factor,1)*IF(AND(by_haul,NOT(AND(wheeled,by_hand))),haul_factor,1)*IF(by_soil,soil_factor,1)",
        "Time factor",
        { decimals: 2 },
      ),
      hours: calc(hours, "HOURS_AT(quantity,rate)*site_factor", "Man-hours", { strong: true }),
      machine_share: office(percent, "Machine share", { least: 0, most: 1, decimals: 0 }),
      machine: calc(hours, "IF(by_hand,0[h],hours*machine_share)", "Machine hours", { strong: true, zero: "–" }),
    },
  );

/** Work that no quantity drives. */
export const ownTasks = table(
  "additional_tasks",
  "Additional tasks",
  { section: "Additional tasks", rows: capacity.additionalTasks, filled: "hours>0" },
  {
    task: decide(text, "Task"),
    hours: decide(hours, "Man-hours", { least: 0, most: 2000 }),
    machine: decide(hours, "Machine hours", { optional: true, least: 0, most: 2000 }),
    fits: check(
      "machine<=hours",
      "{task}: more machine hours than man-hours. Lower its machine hours in additional_tasks on sheet Decisions.",
      {
        label: "Machine hours over man-hours",
      },
    ),
  },
);
