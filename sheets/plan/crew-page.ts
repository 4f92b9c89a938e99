import { draftLine, heading, type Section } from "./page-line.js";
import { stages } from "./stages.js";

/** Marks a step of the work, with boxes for its hours and initials. */
export const stepMark = "☐ ";

/** Dangers, the gravest first; then the work in the order of building; hours that belong to no step; cautions. */
export const crewPage = [
  { name: "draft", opens: draftLine },
  { name: "stop: lifting" },
  { name: "stop: digging" },
  { name: "stop: trees" },
  { name: "stop: walls" },
  { name: "stop: berms" },
  { name: "stop: water" },
  { name: "job" },
  { name: "before", opens: heading("Before the first shovel") },
  { name: "trees" },
  // a stage's tasks, then what they need to know
  ...stages.flatMap((name) => [{ name: `do: ${name}` as const }, { name: `step: ${name}` as const }]),
  { name: "hours", opens: heading("Every day") },
  { name: "caution: power", opens: heading("Cautions") },
  { name: "caution: basin" },
  { name: "caution: children" },
] as const satisfies readonly Section[];

export type CrewSection = (typeof crewPage)[number]["name"];
