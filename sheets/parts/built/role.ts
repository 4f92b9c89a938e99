import type { Template } from "../../../engine/template/index.js";

type Built = NonNullable<NonNullable<Template["roles"]>["built"]>;

/** The states of a job, as the cell `job_state` says them. */
export const states: Built["states"] = { bid: "bid", won: "won", lost: "lost", built: "built" };

/** Where a job tells what it really took, for programs that know no trade. */
export const builtRole: Built = {
  state: "job_state",
  states,
  decided: "decided_on",
  began: "work_began",
  ended: "work_ended",
  reason: "lost_reason",
  days: "days_taken",
  daysPlanned: "work_days",
  rainDays: "rain_days_taken",
  rainDaysPlanned: "days_lost",
  charged: "price_charged",
  costPlanned: "direct_planned",
  costMade: "direct_made",
  toldWhole: "told_whole",
  leftOut: "back_left_out",
  tasks: {
    task: "tasks.task",
    unit: "tasks.unit",
    rateCode: "tasks.machine_code",
    handRateCode: "tasks.hand_code",
    byHand: "by_hand",
    rate: "tasks.rate",
    factor: "tasks.site_factor",
    plannedQuantity: "tasks.quantity",
    plannedHours: "tasks.hours",
    plannedMachine: "tasks.machine",
    quantity: "built_tasks.quantity_done",
    hours: "built_tasks.hours_taken",
    machine: "built_tasks.machine_taken",
    note: "built_tasks.note",
  },
  others: { task: "built_others.task", hours: "built_others.hours_taken", why: "built_others.why" },
  conditions: ["work_method", "soil_grade", "access_factor", "haul_factor", "soil_factor", "crew_size"],
};
