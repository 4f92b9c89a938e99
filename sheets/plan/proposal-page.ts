import { draftLine, heading, headingMark, type Section } from "./page-line.js";

/** What the customer reads, from scope to signature. No codes, costs or margins. */
export const proposalPage = [
  { name: "opening", opens: draftLine },
  { name: "scope", opens: heading("What we will build") },
  { name: "lights" },
  { name: "supply" },
  { name: "protection" },
  { name: "trees" },
  { name: "storm" },
  {
    name: "price",
    opens: {
      says: `IF(LEN(TEXTJOIN("",TRUE,options.description))>0,"${headingMark}Payments and options","${headingMark}Payments")`,
    },
  },
  { name: "time", opens: heading("Time and changes") },
  { name: "running", opens: heading("Running cost and care") },
  { name: "water lost" },
  { name: "upkeep" },
  { name: "not included", opens: heading("Not included") },
  { name: "note: pump", opens: heading("Please note") },
  { name: "note: children" },
  { name: "warranty" },
  { name: "terms", opens: heading("Terms", "terms_given>0") },
] as const satisfies readonly Section[];

export type ProposalSection = (typeof proposalPage)[number]["name"];
