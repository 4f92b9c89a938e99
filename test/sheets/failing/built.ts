import { asItIs, type FailingCase, pasted } from "./case.js";

const dates = { work_began: "2027-05-10", work_ended: "2027-05-14" };
const hours = { built_tasks: [{ hours_taken: 9, quantity_done: 1 }] };

const twice = { supplier: "Demo stone yard", invoiced: 1000 };

/** What was typed after the work and does not go together: each is worth a look, none stops the bid. */
export const builtCases: FailingCase[] = [
  ["inputs_right_built", () => ({ days_taken: 900 })],
  ["inputs_right_built", asItIs, pasted("lost_reason", "the weather")],
  ["figures_right_built", () => dates, pasted("days_taken", "four")],
  ["state_fits_hours", () => hours],
  ["state_fits_hours", () => ({ ...hours, job_state: "lost" })],
  ["built_has_hours", () => ({ job_state: "built", price_charged: 50000 })],
  ["lost_has_reason", () => ({ job_state: "lost" })],
  ["work_dates_in_order", () => ({ work_began: "2027-05-14", work_ended: "2027-05-10" })],
  ["decided_before_work", () => ({ ...dates, decided_on: "2027-05-12" })],
  ["days_fit_dates", () => ({ ...dates, days_taken: 4, rain_days_taken: 2 })],
  ["tasks_told_whole", () => ({ built_tasks: [{ hours_taken: 9 }] })],
  ["tasks_told_whole", () => ({ built_tasks: [{ quantity_done: 1 }] })],
  ["machine_within_hours", () => ({ built_tasks: [{ hours_taken: 3, machine_taken: 4 }] })],
  ["figures_right_look_back", () => hours, pasted("labor_rate_paid", "forty")],
  ["effects_add_up", () => hours, pasted("effect_sizes.by_rate[1]", 5)],
  ["effects_add_up", () => hours, pasted("effect_sizes.by_quantity[1]", -1)],
  ["costs_add_up", () => hours, pasted("cost_sizes.by_price[2]", 50)],
  ["costs_add_up", () => hours, pasted("cost_effects.made[1]", 10)],
  ["meter_near_plan", () => ({ built_lines: [1, 2, 3].map(() => ({ flow_metered: 9 })) })],
  ["suppliers_on_orders", () => ({ built_invoices: [{ supplier: "Nobody", invoiced: 10 }] })],
  ["suppliers_on_orders", () => ({ built_invoices: [{ invoiced: 10 }] })],
  [
    "invoice_given_once",
    () => ({ built_invoices: [twice, { supplier: "Demo pipe", invoiced: 5 }, twice] }),
  ],
];
