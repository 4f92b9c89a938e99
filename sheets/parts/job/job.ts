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
    job_title: input(text, "What is to be built, in a few words", {
      default: "Disappearing waterfall",
    }),
    customer: input(text, "Customer", { note: "As it stands on the proposal." }),
    site: input(text, "Site", { note: "Street and town, as on the proposal." }),
    estimator: input(text, "Estimator", { note: "Who stands behind this bid." }),
    bid_date: input(date, "Date of the bid", { note: "Quotes are checked against this day." }),
    good_for_days: input(days, "The bid is good for", {
      default: 30,
      least: 1,
      most: 365,
      whole: true,
      decimals: 0,
    }),
    start_month: input(count, "Month in which work starts (1 to 12)", {
      least: 1,
      most: 12,
      whole: true,
      note: "Chooses the rain of that month.",
    }),
    start_words: input(text, "When work starts, as the proposal says it", {
      optional: true,
      note: "Such as: in the week of May 10, 2027. Blank: the month.",
    }),
    proposal_number: input(text, "Number of the offer", { optional: true }),
  }),
  lines("Your company, as on the proposal", {
    company: input(text, "Company", { optional: true }),
    company_address: input(text, "Address", { optional: true }),
    company_license: input(text, "License", { optional: true }),
    company_phone: input(text, "Telephone", { optional: true }),
    warranty: input(text, "Warranty, in the words of the proposal", {
      optional: true,
      note: "What you stand for, and how long. Blank: the proposal says nothing of it.",
    }),
  }),
  lines("How it will be run", {
    hours_a_day: input(hoursADay, "Hours the water runs each day", {
      default: 12,
      least: 0,
      most: 24,
    }),
    months_a_year: input(number, "Months the water runs each year", {
      default: 8,
      least: 0,
      most: 12,
      decimals: 1,
    }),
    energy_rate: input(energyRate, "The customer's price of electricity", {
      default: 0.16,
      least: 0,
      most: 2,
      note: "From the customer's power bill, delivery charges included.",
    }),
  }),
];
