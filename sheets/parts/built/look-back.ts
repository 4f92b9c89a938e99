import {
  calc,
  chart,
  check,
  count,
  hourlyRate,
  hours,
  lines,
  money,
  percent,
  prose,
  published,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { states } from "./role.js";

/** Hours of the whole job that were told, and the plan of the same. */
export const hoursBack = lines("Hours and days", {
  hours_given: calc(hours, "SUM(task_effects.taken)+other_hours_taken", "Hours told", { strong: true }),
  hours_given_planned: calc(hours, "SUM(task_effects.of_plan)+other_hours_planned", "Hours planned for the same", {
    strong: true,
  }),
  tasks_more: calc(hours, "HOURS_READ(SUM(effect_sizes.more))", "Difference of tasks", { strong: true }),
  tasks_by_quantity: calc(hours, "HOURS_READ(SUM(effect_sizes.by_quantity))", "— by quantity"),
  tasks_by_rate: calc(hours, "HOURS_READ(SUM(effect_sizes.by_rate))", "— by rate"),
  tasks_not_split: calc(hours, "HOURS_READ(hours_not_split)", "— not split"),
  others_hours_more: calc(hours, "HOURS_READ(other_hours_taken-other_hours_planned)", "Difference of other work", {
    strong: true,
    note: "Set-up and travel, inspections, additional tasks, and work that was not planned.",
  }),
  machine_given: calc(hours, "SUM(built_tasks.machine_taken)", "Machine hours told"),
  effects_add_up: check(
    "ABS(SUM(effect_sizes.more)-SUM(effect_sizes.by_quantity)-SUM(effect_sizes.by_rate)-hours_not_split)<=0.001[h]",
    "Effects of quantity and rate do not add up to the difference of the tasks. Write the bid again from its record.",
    { label: "Hour effects off the total", level: "look" },
  ),
});

/** Machines by hour stand with their invoices; what an hour of labor was planned to cost holds all of labor's cost. */
export const laborBack = lines("Cost of an hour", {
  labor_rate_planned: calc(hourlyRate, "IF(man_hours>0[h],labor_cost/man_hours,0)", "Labor cost planned per hour", {
    note: "All of the labor cost, the machine operator and whole days paid with it, over all man-hours.",
  }),
  invoices_planned: calc(money, "SUM(invoice_sums.planned_told)", "Planned of suppliers told"),
  goods_planned: calc(money, 'SUMPRODUCT((bought.supplier<>"")*bought.cost)', "Materials of all orders"),
  options_cost: calc(money, "SUMPRODUCT(options.taken*options.option_cost)", "Cost of options taken"),
  hires_planned: calc(money, "SUMPRODUCT(built_hires.told*built_hires.planned)", "Planned of hires told"),
  others_more: calc(
    money,
    "SUMPRODUCT(built_subcontracts.told*(built_subcontracts.invoiced-built_subcontracts.planned))+GIVEN_MORE(electrician_invoiced,electrician_cost)",
    "Work by others over plan",
  ),
  others_told: calc(count, "SUM(built_subcontracts.told)+IF(ISBLANK(electrician_invoiced),0,1)", "Others told"),
  others_planned: calc(
    count,
    "SUMPRODUCT((built_subcontracts.planned>0)*1)+IF(electrician_cost>0[$],1,0)",
    "Others planned",
  ),
  goods_tax_planned: calc(money, "materials_tax+pump_tax", "Sales tax planned"),
  labor_by_quantity: calc(money, "ROUND(SUM(effect_sizes.by_quantity)*labor_rate_planned,6)", "Labor cost by quantity"),
  labor_by_rate: calc(money, "ROUND(SUM(effect_sizes.by_rate)*labor_rate_planned,6)", "Labor cost by rate"),
  labor_not_split: calc(
    money,
    "ROUND((hours_not_split+other_hours_taken-other_hours_planned)*labor_rate_planned,6)",
    "Labor cost not split",
  ),
});

type Row = readonly [
  what: string,
  planned: string,
  made: string,
  quantity: string,
  rate: string,
  price: string,
  other: string,
  told: string,
];
const none = "0[$]";
const invoices = "SUM(built_invoices.invoiced)-invoices_planned";
const hires = "SUMPRODUCT(built_hires.told*(built_hires.invoiced-built_hires.planned))";
const paid = "IF(ISBLANK(labor_rate_paid),labor_rate_planned,labor_rate_paid)";

const rows: readonly Row[] = [
  [
    "Labor",
    "labor_cost",
    `labor_cost-hours_given_planned*labor_rate_planned+hours_given*${paid}`,
    "labor_by_quantity",
    "labor_by_rate",
    `PRICE_EFFECT(labor_rate_planned,${paid},hours_given)`,
    "labor_not_split",
    'FIXED(share_of_hours*100,0)&" %"',
  ],
  [
    "Materials",
    "goods_planned",
    "goods_planned-invoices_planned+SUM(built_invoices.invoiced)",
    none,
    none,
    invoices,
    none,
    'IF(goods_planned>0[$],FIXED(invoices_planned/goods_planned*100,0)&" %","none")',
  ],
  [
    "Sales tax",
    "goods_tax_planned",
    "IF(ISBLANK(tax_paid),goods_tax_planned,tax_paid)",
    none,
    none,
    "GIVEN_MORE(tax_paid,goods_tax_planned)",
    none,
    'IF(ISBLANK(tax_paid),"no","yes")',
  ],
  [
    "Equipment, hauling and site",
    "equipment_cost",
    "equipment_cost-hires_planned+SUM(built_hires.invoiced)",
    none,
    none,
    hires,
    none,
    'FIXED(SUM(built_hires.told),0)&" of "&FIXED(SUMPRODUCT((built_hires.planned>0)*1),0)',
  ],
  [
    "Work by others",
    "subcontract_cost",
    "subcontract_cost+others_more",
    none,
    none,
    "GIVEN_MORE(electrician_invoiced,electrician_cost)+SUMPRODUCT(built_subcontracts.told,built_subcontracts.invoiced-built_subcontracts.planned)",
    none,
    'IF(others_told+others_planned>0,FIXED(others_told,0)&" of "&FIXED(others_planned,0),"none")',
  ],
];
const of = (column: number) => (row: number) => (rows[row - 1] as Row)[column] as string;
const read = (column: number) => (row: number) => `MONEY_READ(${of(column)(row)})`;
const cents = { decimals: 0 } as const;
const effect = { ...cents, zero: "–" } as const;

/** Cost against plan, and what the difference comes from. What is not told counts as planned. */
export const costEffects = table(
  "cost_effects",
  "Cost by kind",
  {
    rows: rows.length,
    data: rows.map(([what]) => ({ what })),
    note: "Told: the share of hours and of what was ordered, invoices of those planned. What is not told stands in Made as planned. By price: what an hour cost, and invoices against the plan. Not split: hours without a quantity, and other work.",
  },
  {
    what: published(text, "Cost", { source: "the kinds of cost of this template" }),
    planned: calc(money, of(1), "Planned", cents),
    told: calc(text, of(7), "Told"),
    made: calc(money, of(2), "Made", { strong: true, ...cents }),
    more: calc(money, "MONEY_READ(made-planned)", "Difference", { strong: true, ...cents }),
    by_quantity: calc(money, read(3), "By quantity", effect),
    by_rate: calc(money, read(4), "By rate", effect),
    by_price: calc(money, (row) => `MONEY_READ(INDEX(cost_sizes.by_price,${row}))`, "By price", effect),
    not_split: calc(money, read(6), "Not split", effect),
  },
);

/** What prices made of each kind: of these the sums are made, and not of what is shown. Sums that come to nothing leave a trillionth over. */
export const costSizes = table(
  "cost_sizes",
  "Differences of cost in full",
  { rows: rows.length },
  { by_price: calc(money, (row) => `ROUND(${of(5)(row)},6)`, "By price") },
);

const sum = (key: string) => `SUM(cost_effects.${key})`;

/** Their sums: made against planned by itself, not as the sum of the effects. */
export const costTotal = table(
  "cost_total",
  "Direct cost",
  { rows: 1, data: [{ what: "Direct cost" }] },
  {
    what: published(text, "All kinds", { source: "the kinds of cost of this template" }),
    planned: calc(money, sum("planned"), "Planned", cents),
    told: calc(text, 'IF(told_whole,"all","in part")', "Told"),
    made: calc(money, sum("made"), "Made", { strong: true, ...cents }),
    more: calc(money, "MONEY_READ(made-planned)", "Difference", { strong: true, ...cents }),
    by_quantity: calc(money, "MONEY_READ(labor_by_quantity)", "By quantity", effect),
    by_rate: calc(money, "MONEY_READ(labor_by_rate)", "By rate", effect),
    by_price: calc(money, "MONEY_READ(SUM(cost_sizes.by_price))", "By price", effect),
    not_split: calc(money, "MONEY_READ(labor_not_split)", "Not split", effect),
  },
);

/** What the job left. */
export const marginBack = lines("Margin", {
  cost_more: calc(money, "SUM(cost_total.more)", "Cost over plan", { strong: true, ...cents }),
  contingency_kept: calc(
    money,
    "contingency_cost+options_cost*contingency_share/(1+overhead_share+contingency_share)",
    "Contingency of the plan",
    cents,
  ),
  charged_counted: calc(money, "IF(ISBLANK(price_charged),contract_price,price_charged)", "Charged", {
    note: "The contract price, where it is not told.",
    ...cents,
  }),
  cost_made: calc(money, "contract_cost-contingency_kept+direct_made-direct_planned", "Cost made", {
    note: "The planned cost without its contingency, with the differences. Overhead counts as planned.",
    ...cents,
  }),
  margin_kept: calc(percent, "contract_margin", "Margin planned", {
    note: "After the contingency, as if all of it were spent.",
  }),
  margin_made: calc(
    percent,
    `IF(AND(charged_counted>0[$],job_state<>"${states.lost}",built_work_told+built_costs_told>0),1-cost_made/charged_counted,0)`,
    "Margin made",
    { strong: true, zero: "not told" },
  ),
  costs_add_up: check(
    "ABS(direct_made-direct_planned-labor_by_quantity-labor_by_rate-SUM(cost_sizes.by_price)-labor_not_split)<=0.01[$]",
    "The effects of quantity, rate and price do not add up to the difference of cost. Write the bid again from its record.",
    { label: "Cost effects off the total", level: "look" },
  ),
});

/** What is left out, said before anybody reads a figure. */
export const lookBackHead = prose("In words", {
  back_state: calc(
    text,
    '"This job is "&job_state&JOINED(": ",lost_reason)&DAY_OF(", decided ",decided_on)&DAY_OF(". Work ended ",work_ended)&"."',
    "State",
  ),
  back_told: calc(
    text,
    'IF(built_given=0,"Nothing is told yet on sheet Built: all that follows is the plan.",days_back&" "&rain_back&who_told)',
    "Days and rain",
  ),
  back_left_out: calc(
    text,
    `IF(job_state="${states.lost}","Nothing was built: what follows is the plan.",back_as_planned)`,
    "Left out",
  ),
  back_hours: calc(
    text,
    'IF(built_hours_told=0,"No hours of tasks are told.","Tasks told: "&HOURS_MORE_SAID(tasks_more/1[h])&": "&hours_parts_said&".")',
    "Hours",
  ),
  back_margin: calc(
    text,
    'IF(built_work_told+built_costs_told=0,"No hours and no sums are told: the margin is not looked at.",margin_said)',
    "Margin",
  ),
  back_first: calc(text, "INDEX(largest_effects.in_words,1)", "Largest difference"),
  back_second: calc(text, "INDEX(largest_effects.in_words,2)", "Second"),
  back_third: calc(text, "INDEX(largest_effects.in_words,3)", "Third"),
});

/** Steps to the hours, and the sentences that the head of the page says. */
export const hoursParts = lines("Steps of the hours and words", {
  direct_planned: calc(money, "SUM(cost_total.planned)", "Direct cost planned"),
  direct_made: calc(money, "SUM(cost_total.made)", "Direct cost made"),
  hours_not_split: calc(
    hours,
    'SUMPRODUCT(((built_tasks.told="hours")*1+(built_tasks.told="both")*(built_tasks.planned<=0))*(built_tasks.hours_taken-built_tasks.hours_planned))',
    "Hours not split",
    { decimals: 3 },
  ),
  told_whole: calc(
    yesno,
    `AND(job_state="${states.built}",LEN(hours_left_out&goods_left_out&hires_left_out&others_left_out)=0)`,
    "All is told",
  ),
  share_of_hours: calc(percent, "IF(man_hours>0[h],hours_given_planned/man_hours,0)", "Share of hours told"),
  other_hours_taken: calc(
    hours,
    "SUM(built_additional.hours_taken)+SUM(built_others.hours_taken)+daily_hours_taken+inspection_hours_taken",
    "Hours of other work",
  ),
  other_hours_planned: calc(
    hours,
    "SUMPRODUCT(built_additional.told*built_additional.hours_planned)+IF(ISBLANK(daily_hours_taken),0[h],daily_hours)+inspection_hours_told",
    "Hours of other work planned",
  ),
  inspection_hours_told: calc(
    hours,
    "IF(ISBLANK(inspection_hours_taken),0[h],inspection_hours)",
    "— inspections of these",
  ),
  back_as_planned: calc(
    text,
    '"Counted as planned: overhead"&JOINED(", ",hours_left_out)&JOINED(", ",goods_left_out)&JOINED(", ",hires_left_out)&JOINED(", ",others_left_out)&"."',
    "Counted as planned",
  ),
  days_back: calc(text, 'DAYS_AGAINST("Days of work",days_taken,"planned",work_days)', "Days"),
  rain_back: calc(text, 'DAYS_AGAINST("Days lost to rain",rain_days_taken,"allowed",days_lost)', "Rain"),
  margin_said: calc(
    text,
    '~Charged {charged_counted|0}, cost {cost_made|0}: a margin of {margin_made}, planned {margin_kept}{IF(ISBLANK(price_charged)," (the charge is not told: contract price)","")}.',
    "Margin in words",
  ),
});

/** Parts of what stands in words. */
export const lookBackParts = prose("Parts of the words", {
  who_told: calc(text, 'JOINED(" Told by ",told_by)&DAY_OF(" on ",told_on)&IF(LEN(told_by)>0,".","")', "Told by"),
  hours_left_out: calc(
    text,
    'IF(hours_given_planned<man_hours-0.05[h],FIXED((man_hours-hours_given_planned)/1[h],0)&" man-hours not told","")',
    "Hours left out",
  ),
  goods_left_out: calc(
    text,
    'TEXTJOIN(", ",TRUE,MONEY_LEFT_SAID("materials",goods_planned-invoices_planned),IF(AND(ISBLANK(tax_paid),goods_tax_planned>0.5[$]),"sales tax",""))',
    "Goods left out",
  ),
  others_left_out: calc(text, 'IF(others_told<others_planned,"work by others","")', "Others left out"),
  hires_left_out: calc(text, 'MONEY_LEFT_SAID("hire and site",equipment_cost-hires_planned)', "Hires left out"),
  hours_parts_said: calc(
    text,
    'HOURS_PARTS_SAID(tasks_by_quantity,tasks_by_rate)&", "&FIXED(tasks_not_split/1[h],1)&" not split"',
    "Parts of hours",
  ),
});

export const stageChart = chart(
  "Hours by stage",
  "Man-hours",
  "",
  [
    { label: "Planned", x: "stage_hours.stage", y: "stage_hours.planned", marks: "bars" },
    { label: "Taken", x: "stage_hours.stage", y: "stage_hours.taken", marks: "bars" },
  ],
  {
    alt: "Two bars for each stage of the work: man-hours planned and taken, of the tasks told; of all tasks as planned, where none is told.",
    lines: 29,
  },
);
