import { draftLine, heading, type Section } from "./page-line.js";
import { crewStages } from "./stages.js";

/** Marks a step of the work, with boxes for its hours and initials. */
export const stepMark = "☐ ";

/** Dangers, the gravest first, and cautions; then the work in the order of building; hours that belong to no step. */
export const crewPage = [
  { name: "draft", opens: draftLine },
  { name: "stop: lifting" },
  { name: "stop: digging" },
  { name: "stop: trees" },
  { name: "stop: walls" },
  { name: "stop: berms" },
  { name: "stop: water" },
  { name: "caution: lifting" },
  { name: "caution: power" },
  { name: "caution: basin" },
  { name: "caution: children" },
  { name: "before", opens: heading("Before the first shovel") },
  { name: "job" },
  { name: "trees" },
  // a stage's tasks, then what they need to know
  ...crewStages.flatMap((name) => [{ name: `do: ${name}` as const }, { name: `step: ${name}` as const }]),
  { name: "hours" },
] as const satisfies readonly Section[];

export type CrewSection = (typeof crewPage)[number]["name"];
