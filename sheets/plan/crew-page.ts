import { draftLine, heading, type Section } from "./page-line.js";

/** What the crew builds from, in the order in which it is built; then hours and cautions. */
export const crewPage = [
  { name: "draft", opens: draftLine },
  // the gravest first
  { name: "stop: lifting" },
  { name: "stop: digging" },
  { name: "stop: trees" },
  { name: "stop: walls" },
  { name: "stop: berms" },
  { name: "stop: water" },
  { name: "job" },
  { name: "before", opens: heading("Before the first shovel") },
  { name: "trees" },
  { name: "set out", opens: heading("Set out") },
  { name: "strip", opens: heading("Strip and dig") },
  { name: "dig the basin" },
  { name: "dig the stream" },
  { name: "dig trenches" },
  { name: "dig safely" },
  { name: "haul" },
  { name: "walls", opens: heading("Walls", "wall_face>0") },
  { name: "berms", opens: heading("Berm", "berm_volume>0") },
  { name: "liner", opens: heading("Liner") },
  { name: "basin", opens: heading("Basin") },
  { name: "overflow" },
  { name: "main", opens: heading("Pipe and valves") },
  { name: "pipe" },
  { name: "backfill", opens: heading("Backfill") },
  { name: "stone", opens: heading("Stone") },
  { name: "pump", opens: heading("Pump and first water") },
  { name: "hours", opens: heading("Order of work, man-hours") },
  { name: "caution: power", opens: heading("Cautions") },
  { name: "caution: basin" },
  { name: "caution: children" },
] as const satisfies readonly Section[];

export type CrewSection = (typeof crewPage)[number]["name"];
