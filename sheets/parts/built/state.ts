import { check, date, days, hourlyRate, input, lines, money, text } from "../../../engine/template/index.js";
import { states } from "./role.js";

/** What became of the bid, and when. */
export const jobState = lines("State of the job", {
  job_state: input(text, "State of the job", {
    default: states.bid,
    choices: Object.values(states),
    note: "Nothing on this sheet moves the bid. What is left blank is not compared, and nothing is guessed for it.",
  }),
  decided_on: input(date, "Date decided", { optional: true }),
  lost_reason: input(text, "Reason lost", {
    optional: true,
    choices: ["price", "time", "other work", "no answer", "other"],
  }),
  told_by: input(text, "Filled in by", { optional: true, note: "The trail names this person for all of this sheet." }),
  told_on: input(date, "Filled in on", { optional: true }),
  work_began: input(date, "Work began", { optional: true }),
  work_ended: input(date, "Work ended", { optional: true }),
  days_taken: input(days, "Days of work", {
    optional: true,
    least: 0,
    most: 500,
    note: "Days on which work was done.",
  }),
  rain_days_taken: input(days, "Days lost to rain", { optional: true, least: 0, most: 300 }),
  price_charged: input(money, "Charged in the end", {
    optional: true,
    least: 0,
    most: 1e7,
    note: "The contract price with all changes that were agreed on, before the customer's own taxes.",
  }),
  labor_rate_paid: input(hourlyRate, "Labor cost paid per hour", {
    optional: true,
    least: 1,
    most: 1000,
    note: "With taxes, insurance and paid leave, of each hour given here: payroll of the job over its hours.",
  }),
});

/** What was typed and does not go together. None of it keeps the bid from standing. */
export const stateChecks = lines("Checks of the state", {
  state_fits_hours: check(
    `OR(built_hours_told=0,job_state="${states.won}",job_state="${states.built}")`,
    "Hours are given, but the job is told as {job_state}. Choose won or built in job_state on sheet Built.",
    { label: "Hours of an unbuilt job", level: "look" },
  ),
  built_has_hours: check(
    `OR(job_state<>"${states.built}",built_hours_told>0)`,
    "The job is built, but no hours are given, so nothing is compared. Enter them in built_tasks.hours_taken on sheet Built.",
    { label: "Built without hours", level: "look" },
  ),
  lost_has_reason: check(
    `OR(job_state<>"${states.lost}",NOT(ISBLANK(lost_reason)))`,
    "The job is lost, and no reason is given. Choose one in lost_reason on sheet Built.",
    { label: "Lost without a reason", level: "look" },
  ),
  work_dates_in_order: check(
    "OR(ISBLANK(work_began),ISBLANK(work_ended),work_began<=work_ended)",
    "Work ended on {work_ended}, before it began on {work_began}. Correct work_began or work_ended on sheet Built.",
    { label: "Work ended before it began", level: "look" },
  ),
  decided_before_work: check(
    "OR(ISBLANK(decided_on),ISBLANK(work_began),decided_on<=work_began)",
    "Work began on {work_began}, before the job was decided on {decided_on}. Correct decided_on or work_began on sheet Built.",
    { label: "Work before the decision", level: "look" },
  ),
  days_fit_dates: check(
    "OR(ISBLANK(work_began),ISBLANK(work_ended),days_taken+rain_days_taken<=work_ended-work_began+1[days])",
    "Days of work and days lost to rain are more than the calendar has from {work_began} to {work_ended}. Correct days_taken on sheet Built.",
    { label: "More days than dates", level: "look" },
  ),
  tasks_told_whole: check(
    "built_half_told=0",
    "Of {built_half_told|0} tasks only hours or only quantity is given: no rate is learned there. Complete built_tasks on sheet Built.",
    { label: "Hours without quantity", level: "look" },
  ),
  machine_within_hours: check(
    "SUMPRODUCT((built_tasks.machine_taken>built_tasks.hours_taken)*1)=0",
    "A task has more machine hours than man-hours. Correct built_tasks.machine_taken on sheet Built.",
    { label: "Machine hours over hours taken", level: "look" },
  ),
  suppliers_on_orders: check(
    "SUMPRODUCT((built_invoices.known=FALSE)*invoice_sums.told)=0",
    "A supplier of an invoice has no order, see sheet Orders. Spell built_invoices.supplier on sheet Built alike, unless it was bought elsewhere.",
    { label: "Supplier not on Orders", level: "look" },
  ),
  invoice_given_once: check(
    "SUM(invoice_sums.again)=0",
    "One supplier has two invoices of the same sum. Clear one in built_invoices on sheet Built, unless both are right.",
    { label: "Invoice given twice", level: "look" },
  ),
});
