/** Densities of solid rock, lb/ft³: a single stone, or a pile after its voids are taken off. */
export const rocks = [
  { name: "field stone", density: 165, origin: "common practice, no source" },
  { name: "granite", density: 168, origin: "density list of rock (from memory)" },
  { name: "limestone", density: 163, origin: "density list of rock (from memory)" },
  { name: "basalt", density: 188, origin: "general engineering density list: basalt, solid" },
] as const;
