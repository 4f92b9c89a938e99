import {
  calc,
  check,
  days,
  hourlyRate,
  hours,
  hoursADay,
  lines,
  money,
  percent,
  prose,
  text,
} from "../../../engine/template/index.js";
import { rate } from "../../vocabulary/rate.js";

/** Hours and days of the whole job. */
export const laborTotals = lines("Hours and days", {
  task_hours: calc(hours, "SUM(tasks.hours)+SUM(additional_tasks.hours)+inspection_hours", "Man-hours of tasks", {
    note: "All tasks, additional ones and our inspections: machine hours and hand hours together.",
  }),
  machine_hours: calc(hours, "SUM(tasks.machine)+SUM(additional_tasks.machine)", "Machine hours"),
  hand_hours: calc(hours, "task_hours-machine_hours", "Hand hours", { note: "Tasks outside the machine's seat." }),
  hours_at_tasks: calc(hoursADay, "MAX(1[h/day],shift_hours-daily_set_up-travel_time)", "Hours at tasks a day", {
    working: true,
  }),
  machine_days: calc(days, "WHOLE_UP(machine_hours/hours_at_tasks/1[days])*1[days]", "Machine days", { decimals: 0 }),
  work_days: calc(
    days,
    "WHOLE_UP(MAX(task_hours/MAX(crew_size,1),machine_hours)/hours_at_tasks/1[days])*1[days]",
    "Work days",
    { strong: true, decimals: 0, note: "The crew's hours shared out, or the machine's where they take longer." },
  ),
  daily_hours: calc(hours, "work_days*MAX(crew_size,1)*(daily_set_up+travel_time)", "Set-up, clean-up and travel", {
    note: "Of the whole crew, each work day: the times are on sheet Office rules.",
  }),
  man_hours: calc(hours, "task_hours+daily_hours", "Total man-hours", {
    strong: true,
    note: "Man-hours of tasks, with set-up, clean-up and travel.",
  }),
  paid_man_hours: calc(
    hours,
    "IF(pay_whole_days,work_days*crew_size*MAX(shift_hours,1[h/day]),man_hours)",
    "Man-hours paid",
    { strong: true },
  ),
  hand_without_machine: check(
    "OR(NOT(by_hand),machine_hours<=0)",
    "Work is by hand, but additional tasks hold {machine_hours} of a machine. Clear them in additional_tasks on sheet Decisions, or set method_choice.",
    { label: "Machine hours by hand" },
  ),
  one_machine: check(
    "machine_hours*MAX(crew_size,1)<=task_hours",
    "The machine runs {machine_hours}, longer than the crew's hours shared out: people wait. Lower tasks.machine_share on sheet Office rules, or hire two.",
    { label: "Machine slower than crew", level: "look" },
  ),
});

/** What the hours cost. */
export const laborCost = lines("Cost of labor", {
  burden: calc(percent, 'SUM_WHERE(used_rates.value,used_rates.group,"burden")/100', "Labor burden", {
    decimals: 2,
    note: "Taxes, insurance, paid leave: the rows of group burden on sheet Prices.",
  }),
  crew_wage: calc(
    hourlyRate,
    `MEAN_WAGE(${rate("wage-foreman")},${rate("wage-laborer")},crew_size)*1[$/h]`,
    "Mean crew wage",
    { working: true, note: "Foreman included." },
  ),
  crew_rate: calc(hourlyRate, "BURDENED_RATE(crew_wage,burden)", "Crew cost per man-hour"),
  operator_rate: calc(hourlyRate, `BURDENED_RATE(${rate("wage-operator")}*1[$/h],burden)`, "Operator cost per hour"),
  own_electrician_hours: calc(
    hours,
    'SUM_WHERE(tasks.hours,tasks.machine_code,"conduit-run")+SUM_WHERE(tasks.hours,tasks.machine_code,"circuit-fitted")',
    "Own electrician's hours",
    { working: true },
  ),
  own_electrician_rate: calc(
    hourlyRate,
    `BURDENED_RATE(${rate("wage-electrician")}*1[$/h],burden)`,
    "Electrician cost per hour",
    { working: true },
  ),
  overtime_share: calc(
    percent,
    "MAX(0,work_week*(shift_hours-overtime_after_day),work_week*shift_hours-overtime_after_week/1[days])/MAX(0.01[h/day],work_week*shift_hours)",
    "Overtime, of hours paid",
    { working: true, source: "29 USC 207: over 40 hours a week; some states also count the day" },
  ),
  overtime_cost: calc(
    money,
    "ROUND(paid_man_hours*overtime_share*overtime_premium*crew_rate,2)",
    "Premium for overtime",
    { working: true },
  ),
  crew_paid_hours: calc(hours, "paid_man_hours-machine_hours-own_electrician_hours", "Crew hours paid", {
    working: true,
  }),
  labor_cost: calc(
    money,
    "ROUND(machine_hours*operator_rate+own_electrician_hours*own_electrician_rate+crew_paid_hours*crew_rate,2)+overtime_cost",
    "Labor, with burden",
    { strong: true },
  ),
});

export const ownTasksInWords = prose("Additional tasks", {
  additional_tasks_said: calc(
    text,
    'IF(SUM(additional_tasks.hours)>0,"Also: "&TEXTJOIN("; ",TRUE,additional_tasks.task)&".","No additional tasks.")',
    "Additional tasks",
  ),
});
