import { gravelRaked } from "../gravel.js";
import { production, withMachine } from "../rates.js";
import { type Task, task } from "../task.js";

const moved = ["by_access", "by_haul"] as const;

/** Stone by what is done with it; lips and faces are in the hours of their fall. */
export const stoneTasks: readonly Task[] = [
  task(
    "Place boulders",
    "stone",
    "placed_stone-rolled_stone",
    withMachine(
      production("boulder-placed", "Place boulders with a machine, banks, shoulders, toe", "ton", 0.5),
      0.4,
      production("boulder-carried", "Carry and place boulders by hand", "ton", 0.2),
    ),
    moved,
  ),
  task(
    "Roll boulders into place by hand",
    "stone",
    "rolled_stone",
    production("boulder-rolled", "Roll boulders into place, bars and planks", "ton", 0.12),
    ["by_haul"],
  ),
  task(
    "Lay cobble of banks and beds",
    "stone",
    "laid_stone",
    withMachine(
      production("cobble-laid", "Bring and lay cobble", "ton", 0.55),
      0.3,
      production("cobble-laid-hand", "Barrow and lay cobble", "ton", 0.35),
    ),
    moved,
  ),
  task("Dump and rake gravel, fill the basin's stone", "stone", "raked_stone", gravelRaked, moved),
  task(
    "Mix and lay mortar of the beds",
    "stone",
    "bed_mortar",
    production("mortar-laid", "Mix and lay mortar", "yd³", 0.12),
    moved,
  ),
];
