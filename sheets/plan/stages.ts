/**
 * The order of building. The crew works down this list; within a stage, tasks stand in the order of
 * the parts that bring them, and each part's in its own.
 */
export const stages = [
  "set out",
  "strip",
  "walls",
  "dig",
  "berms",
  "haul",
  "trenches",
  "liner",
  "basin",
  "main",
  "pipe",
  "backfill",
  "stones",
  "falls",
  "stone",
  "lights",
  "circuit",
  "first water",
  "topsoil",
  "hand over",
] as const;

/**
 * The same for the crew's page, where the circuit comes before the test run, and that before the banks are set
 * to the water's edge.
 */
export const crewStages = stages.flatMap((stage) => {
  if (stage === "circuit") return [];
  return stage === "stone" ? (["circuit", "test run", stage] as const) : [stage];
});

export type Stage = (typeof stages)[number];
