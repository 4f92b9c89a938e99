import { calc, check, count, lines, office, published, table, text, yesno } from "../../../engine/template/index.js";
import { eachRow } from "../../plan/page-line.js";

/** What a lawyer looks for in a contract of this kind; the words are the office's own. */
const clauses = [
  ["Parties", "Who contracts with whom: legal names, kind of company, license, the owner of the land."],
  ["Insurance", "Liability and workers' compensation carried, with limits, and proof on request."],
  ["Allowances", "Sums in the price for what is not chosen yet, and how a difference is settled."],
  ["Hidden conditions", "Rock, groundwater, buried things: notice, and the unit rates at which they are paid."],
  ["Change orders", "In writing, with price and days, signed before the work."],
  ["Late payment", "When a draw is late, what interest runs, when work may stop."],
  ["Delays", "Weather, supply, the owner: what moves the dates, and notice of it."],
  ["Access", "Gates, parking, working hours, water and power, pets and children kept away."],
  ["Private utilities", "Who marks private lines, and who pays where an unmarked one is cut."],
  [
    "Right to cancel",
    "Sold at the buyer's home: three business days and the notice in duplicate, 16 CFR 429.1; and the state's own rule.",
  ],
  ["Liens", "The notices to the owner that the state asks for, and releases with each payment."],
  ["Disputes", "Notice and time to cure, mediation or court, which law holds."],
  ["Other terms", "What else the office's contract says."],
] as const;

/** The office's contract, clause by clause. */
export const terms = table(
  "terms",
  "Contract terms",
  {
    section: "Contract",
    rows: clauses.length,
    data: clauses.map(([clause, holds]) => ({ clause, holds })),
    note: "In the words of the office's own contract: have a lawyer of the state read them. What is blank is not printed.",
  },
  {
    clause: published(text, "Clause", { source: "the usual clauses: common practice, no source" }),
    holds: published(text, "What belongs there", { source: "the usual clauses: common practice, no source" }),
    words: office(text, "Words of the contract", { optional: true }),
  },
);

export const contractTerms = lines("Contract", {
  terms_elsewhere: office(yesno, "Terms in another paper", {
    section: "Contract",
    default: false,
    note: "Yes where the customer signs another contract with the proposal.",
  }),
  terms_given: calc(count, 'SUMPRODUCT((terms.words<>"")*1)', "Contract terms given", { working: true }),
  terms_blank: calc(count, `${clauses.length - 1}-MIN(${clauses.length - 1},terms_given)`, "Contract terms blank", {
    working: true,
  }),
  contract_worded: check(
    "OR(terms_elsewhere,terms_blank=0)",
    "Terms blank: {terms_blank|0}. Fill terms on sheet Office rules or in the office book, with your lawyer, or set terms_elsewhere to yes.",
    { label: "Contract terms blank", level: "look" },
  ),
});

export const termLines = eachRow("terms", terms, "{clause}. {words}", { when: "LEN(words)>0" });
