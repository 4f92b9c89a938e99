import {
  type Block,
  calc,
  count,
  date,
  days,
  decide,
  energyRate,
  hoursADay,
  lines,
  number,
  office,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import type { Whole } from "../brought.js";

/** Who the bid is for, when, and how the feature will be run. */
export const jobBlocks = ({ title, added }: Pick<Whole, "title" | "added">): readonly Block[] => [
  lines("The job", {
    job_title: decide(text, "Title of the job", {
      note: "In a few words what is to be built: it heads every page.",
      default: title,
    }),
    customer: walk(text, "Customer", { note: "As it stands on the proposal." }),
    site: walk(text, "Site", { note: "Street and town, as on the proposal." }),
    estimator: decide(text, "Estimator", { note: "Who stands behind this bid." }),
    bid_date: decide(date, "Bid date", { note: "Quotes are checked against this day." }),
    walked_by: walk(text, "Walked by", { optional: true }),
    walked_on: walk(date, "Walked on", { optional: true }),
    good_for_days: office(days, "Bid good for", {
      default: 30,
      least: 1,
      most: 365,
      whole: true,
      decimals: 0,
    }),
    start_month: decide(count, "Starting month, 1 to 12", {
      least: 1,
      most: 12,
      whole: true,
      note: "Chooses the rain of that month.",
    }),
    start_words: decide(text, "Start, in words", {
      optional: true,
      note: "As the proposal says it, such as: in the week of May 10, 2027. Blank: the month.",
    }),
    proposal_number: decide(text, "Proposal no.", { optional: true }),
    revision: decide(text, "Revision", { optional: true, note: "Such as 2, where an earlier proposal is replaced." }),
    parties_given: calc(
      yesno,
      "NOT(OR(ISBLANK(customer),ISBLANK(site),ISBLANK(estimator),ISBLANK(bid_date),ISBLANK(start_month)))",
      "Job named",
      {
        working: true,
      },
    ),
    described: calc(yesno, `AND(${["parties_given", ...added("given")].join(",")})`, "First fields given", {
      working: true,
      note: "A price of what is not yet described would be no price.",
    }),
  }),
  lines("Company, as on the proposal", {
    company: office(text, "Company", { section: "Company", optional: true }),
    company_address: office(text, "Address", { section: "Company", optional: true }),
    company_license: office(text, "License", { section: "Company", optional: true }),
    company_phone: office(text, "Telephone", { section: "Company", optional: true }),
    company_email: office(text, "Email", { section: "Company", optional: true }),
    company_logo: office(text, "Logo", {
      section: "Company",
      optional: true,
      note: "File name of a PNG or JPEG picture, from the folder of the office book: it heads the pages handed out.",
    }),
    warranty: office(text, "Warranty text", {
      section: "Company",
      optional: true,
      note: "In the words of the proposal: what you stand for, and how long. Blank: the proposal says nothing of it.",
    }),
  }),
  lines("Operation", {
    hours_a_day: decide(hoursADay, "Hours run a day", {
      section: "Pump",
      default: 12,
      least: 0,
      most: 24,
    }),
    look_wanted: walk(text, "Look and sound, in words", {
      section: "Look and sound wanted",
      optional: true,
      note: "What the customer wants to see and hear, and from where. The proposal repeats it.",
    }),
    months_a_year: decide(number, "Months run a year", {
      section: "Pump",
      default: 8,
      least: 0,
      most: 12,
      decimals: 1,
    }),
    energy_rate: decide(energyRate, "Price of electricity", {
      section: "Pump",
      default: 0.16,
      least: 0,
      most: 2,
      note: "From the customer's power bill, delivery charges included.",
    }),
  }),
];
