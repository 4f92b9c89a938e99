import {
  calc,
  check,
  date,
  hours,
  input,
  number,
  precise,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../engine/template/index.js";
import { hourly } from "../tables/trade-units.js";

const unitsInBook = `RATE_UNITS(trade_units.kind,trade_units.size,trade_units.name,INDEX(book_rates.unit,MAX(1,place)),${hourly("unit")})`;
const ofRate = (column: string) => `IF(usable,INDEX(learned.${column},MAX(1,place)),0)`;

/** One row a job and task: what it took, what it weighs, and how far it lies from the others of its rate. */
export const evidence = (rows: number): TableBlock =>
  table(
    "evidence",
    "Jobs and tasks",
    {
      rows,
      filled: "AND(quantity>0,hours>0)",
      note: "Pace: 1.20 is a fifth more an hour than the office book says. To leave a row out, say why in Exclude: it stays here and is counted.",
    },
    {
      task: input(text, "Task", { optional: true }),
      job: input(text, "Job", { optional: true }),
      ended: input(date, "Ended"),
      code: input(text, "Rate", { choices: "book_rates.code" }),
      method: input(text, "Method", { optional: true }),
      quantity: input(number, "Quantity", { decimals: 1 }),
      unit: input(text, "Unit", { optional: true }),
      hours: input(hours, "Man-hours"),
      time_factor: input(number, "Time factor", { default: 1, least: 0.05, most: 50 }),
      planned_rate: input(number, "Planned rate", { optional: true, decimals: 3 }),
      quantity_planned: input(number, "Quantity planned", { optional: true, decimals: 1 }),
      reason: input(text, "Exclude, reason", { optional: true }),
      place: calc(number, "PLACE_OR_ZERO(book_rates.code,code)", "Row of its rate", { working: true, decimals: 0 }),
      book_rate: calc(precise, "IF(place>0,INDEX(book_rates.book_rate,MAX(1,place)),0)", "Rate in book", {
        working: true,
        decimals: 3,
      }),
      units_in_book: calc(precise, `IF(place>0,${unitsInBook},0)`, "Units in book", { working: true }),
      usable: calc(yesno, "AND(book_rate>0,units_in_book>0)", "Can be compared", { working: true }),
      book_hours: calc(
        hours,
        "IF(usable,quantity*units_in_book*time_factor/MAX(0.000001,book_rate),0)*1[h]",
        "Hours by the book",
      ),
      planned_hours: calc(
        hours,
        "IF(planned_rate>0,quantity*time_factor/MAX(0.000001,planned_rate),0)*1[h]",
        "Hours planned then",
        { working: true },
      ),
      actual_rate: calc(precise, "quantity*units_in_book*time_factor/MAX(0.000001,hours/1[h])", "Rate of the job", {
        decimals: 3,
        note: "In the book's unit, with the planned time factor taken out.",
      }),
      pace_log: calc(precise, "IF(usable,LN(book_hours/hours),0)", "Log of pace", { working: true }),
      pace: calc(number, "IF(usable,EXP(pace_log),0)", "Pace", { strong: true }),
      counted: calc(number, "IF(AND(usable,LEN(reason)=0),1,0)", "Counted", { working: true, decimals: 0 }),
      way: calc(number, "WAY(place,method)", "Rate and method", { working: true, decimals: 0 }),
      own_hours: calc(hours, "counted*book_hours", "Hours counted", { working: true }),
      job_place: calc(number, "IF(job=above.job,above.job_place,PLACE_OR_ZERO(job_list.job,job))", "Row of its job", {
        first: "PLACE_OR_ZERO(job_list.job,job)",
        working: true,
        decimals: 0,
      }),
      before: calc(hours, "IF(AND(job=above.job,place=above.place),above.so_far,0[h])", "Hours above of this job", {
        first: "0[h]",
        working: true,
        note: "Rows of one job and rate, one below the other, count as one job together.",
      }),
      so_far: calc(hours, "before+own_hours", "Hours of this job", { working: true }),
      age_weight: calc(precise, "0.5^(MAX(0,(learned_on-ended)/365.25[days])/MAX(0.01,half_life))", "Weight by age", {
        working: true,
      }),
      starts: calc(number, "IF(AND(counted>0,before=0[h]),1,0)", "One more job", { working: true, decimals: 0 }),
      age_count: calc(precise, "starts*age_weight", "Counts as jobs", { working: true }),
      alone: calc(precise, "SIZE_WEIGHT(book_hours,half_hours)", "Weight by size, alone", { working: true }),
      size_weight: calc(
        precise,
        "counted*(SIZE_WEIGHT(so_far,half_hours)-SIZE_WEIGHT(before,half_hours))",
        "Weight by size",
        { working: true },
      ),
      weight: calc(number, "age_weight*size_weight", "Weight"),
      pull: calc(precise, "weight*pace_log", "Weighted pace", { working: true }),
      squares: calc(precise, "weight*pace_log^2", "Weighted square", { working: true }),
      learned_hours: calc(
        hours,
        `IF(counted>0,book_hours*book_rate/MAX(0.000001,${ofRate("rate")}),0[h])`,
        "Hours by learned rate",
        { working: true },
      ),
      bid_hours: calc(
        hours,
        "IF(counted>0,book_hours*book_rate/MAX(0.000001,INDEX(learned.rate_then,MAX(1,place)))*IF(ISBLANK(quantity_planned),1,quantity_planned/quantity),0[h])",
        "Hours as bid now",
        { working: true, note: "The quantity planned, by the rates as they are marked." },
      ),
      others_worth: calc(precise, `MAX(0.000001,${ofRate("worth")}-weight)`, "Others count as", {
        working: true,
      }),
      others_center: calc(precise, `(${ofRate("pull")}-pull)/others_worth`, "Center of the others", {
        working: true,
      }),
      others_freedom: calc(number, `${ofRate("freedom")}-age_count`, "Freedom of the others", {
        working: true,
      }),
      others_spread: calc(
        precise,
        `SQRT(POSTERIOR_VARIANCE(prior_spread,prior_jobs,${ofRate("squares")}-squares,others_worth,others_center,others_freedom))`,
        "Spread of the others",
        { working: true },
      ),
      distance: calc(
        number,
        "IF(usable,(pace_log-others_center)/(others_spread*SQRT(1/MAX(0.000001,alone)+1/others_worth)),0)",
        "Distance",
        {
          decimals: 1,
          note: "From what all others say, in standard deviations of one such job.",
        },
      ),
      far: calc(yesno, "AND(usable,ABS(distance)>T_WITHIN(1-far_share,others_freedom))", "Far", {
        working: true,
      }),
      far_weight: calc(precise, "IF(far,weight,0)", "Weight if far", { working: true }),
      far_pull: calc(precise, "IF(far,pull,0)", "Weighted pace if far", { working: true }),
      says: calc(
        text,
        'IF(LEN(reason)>0,"excluded",IF(NOT(usable),"not comparable",IF(far,IF(distance>0,"far: faster","far: slower"),"")))',
        "Remark",
      ),
      comparable: check(
        "usable",
        "{task} of job {job}: rate {code} has no row on sheet Lists, or unit {unit} measures something else. Correct evidence.code or evidence.unit.",
        { label: "Row cannot be compared" },
      ),
      near: check(
        "OR(NOT(far),LEN(reason)>0)",
        "{task} of job {job}: pace {pace|2} is far from the others ({distance|1}). Look what happened; exclude it with a reason, or keep it.",
        { label: "Job far from the others", level: "look" },
      ),
    },
  );
