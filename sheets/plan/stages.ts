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
  "falls",
  "stone",
  "lights",
  "circuit",
  "first water",
  "topsoil",
  "hand over",
] as const;

export type Stage = (typeof stages)[number];
