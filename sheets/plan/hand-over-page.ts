import { draftLine, heading, type Section } from "./page-line.js";

/** What the owner is left with on the last day: how it is run, kept, and when to call. */
export const handOverPage = [
  { name: "opening", opens: draftLine },
  { name: "cautions", opens: heading("First of all") },
  { name: "run", opens: heading("How it runs") },
  { name: "valves", opens: heading("Valves and flows") },
  { name: "week", opens: heading("Each week and month") },
  { name: "fall", opens: heading("Fall and winter") },
  { name: "spring", opens: heading("Spring") },
  { name: "normal", opens: heading("What is normal") },
  { name: "call", opens: heading("Call us when") },
  { name: "warranty", opens: heading("Warranty", "LEN(warranty)>0") },
] as const satisfies readonly Section[];

export type HandOverSection = (typeof handOverPage)[number]["name"];
