import type { DugPlace } from "../brought.js";
import { capacity } from "../capacity.js";

const footing = (i: number): DugPlace => ({
  what: `"Footing of "&INDEX(walls.name,${i})`,
  depth: `INDEX(walls.dug,${i})`,
  length: `INDEX(walls.length,${i})`,
  around: `INDEX(walls.length,${i})`,
  sides: "0",
  protection: "wall_protection",
});

/** The footings of walls, each a place that somebody may stand in. */
export const wallPlaces: readonly DugPlace[] = Array.from({ length: capacity.walls }, (_, i) => footing(i + 1));
