import type { TableBlock } from "../../engine/template/index.js";
import { draftLine, eachRow, heading, line, type PlacedLine, type RowOptions, type Section } from "./page-line.js";
import { crewStages } from "./stages.js";

/** Marks a step of the work, with boxes for its hours and initials. */
export const stepMark = "☐ ";

/** A step of the work; what there is to know of it stands beside. */
export const step = <S extends CrewSection>(section: S, sentence: string, when?: string): PlacedLine<S> => ({
  ...line(section, `${stepMark}${sentence}`, when),
  begins: true,
});

/** The same for each row of a table. */
export const stepEachRow = <S extends CrewSection>(
  section: S,
  table: TableBlock,
  sentence: string,
  options: RowOptions = {},
): PlacedLine<S>[] =>
  eachRow(section, table, `${stepMark}${sentence}`, options).map((one) => ({ ...one, begins: true }));

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
