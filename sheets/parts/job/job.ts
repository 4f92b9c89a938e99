import {
  type Block,
  count,
  date,
  days,
  energyRate,
  hoursADay,
  input,
  lines,
  number,
  text,
} from "../../../engine/template/index.js";

/** Who the bid is for, when, and how the feature will be run. */
export const jobBlocks: readonly Block[] = [
  lines("The job", {
    job_title: input(text, "Title of the job", {
      note: "In a few words what is to be built: it heads every page.",
      default: "Disappearing waterfall",
    }),
    customer: input(text, "Customer", { note: "As it stands on the proposal." }),
    site: input(text, "Site", { note: "Street and town, as on the proposal." }),
    estimator: input(text, "Estimator", { note: "Who stands behind this bid." }),
    bid_date: input(date, "Bid date", { note: "Quotes are checked against this day." }),
    good_for_days: input(days, "Bid good for", {
      default: 30,
      least: 1,
      most: 365,
      whole: true,
      decimals: 0,
    }),
    start_month: input(count, "Starting month, 1 to 12", {
      least: 1,
      most: 12,
      whole: true,
      note: "Chooses the rain of that month.",
    }),
    start_words: input(text, "Start, in words", {
      optional: true,
      note: "As the proposal says it, such as: in the week of May 10, 2027. Blank: the month.",
    }),
    proposal_number: input(text, "Proposal no.", { optional: true }),
  }),
  lines("Company, as on the proposal", {
    company: input(text, "Company", { optional: true }),
    company_address: input(text, "Address", { optional: true }),
    company_license: input(text, "License", { optional: true }),
    company_phone: input(text, "Telephone", { optional: true }),
    warranty: input(text, "Warranty text", {
      optional: true,
      note: "In the words of the proposal: what you stand for, and how long. Blank: the proposal says nothing of it.",
    }),
  }),
  lines("Operation", {
    hours_a_day: input(hoursADay, "Hours run a day", {
      default: 12,
      least: 0,
      most: 24,
    }),
    months_a_year: input(number, "Months run a year", {
      default: 8,
      least: 0,
      most: 12,
      decimals: 1,
    }),
    energy_rate: input(energyRate, "Price of electricity", {
      default: 0.16,
      least: 0,
      most: 2,
      note: "From the customer's power bill, delivery charges included.",
    }),
  }),
];
