const tests = "structural backfill porosity tests of a maker of stormwater chambers";

/** Porosity of stone fill: the share of the whole volume that is open. Not the void ratio. */
export const voids = [
  {
    name: "clean open-graded stone, for design",
    porosity: 0.4,
    origin: "porosity for design in stormwater manuals; a void ratio of 0.667",
  },
  { name: "No. 57, dumped", porosity: 0.454, origin: tests },
  { name: "No. 4, dumped", porosity: 0.399, origin: tests },
  { name: "No. 4, compacted", porosity: 0.374, origin: tests },
] as const;
