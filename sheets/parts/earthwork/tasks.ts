import { handDigging, handFilling, handLoading, wheeling } from "../../tables/hand-work.js";
import { production, withMachine } from "../rates.js";
import { type Task, task } from "../task.js";

const moved = ["by_access", "by_haul", "wheeled"] as const;

/** What is dug, and what is filled around, in words. */
export interface EarthworkWords {
  readonly dug: string;
  readonly filled: string;
}

export const earthworkTasks = ({ dug, filled }: EarthworkWords): readonly Task[] => [
  task(
    "Strip topsoil",
    "strip",
    "strip_volume",
    withMachine(
      production("strip", "Strip topsoil", "yd³", 3),
      0.5,
      production("strip-hand", "Strip topsoil by hand", "yd³", 0.9, { band: handDigging.soft }),
    ),
    moved,
  ),
  task(
    `Dig ${dug}`,
    "dig",
    "dig_volume",
    withMachine(
      production("dig", "Dig basin and stream", "yd³", 1.6),
      0.5,
      production("dig-hand", "Dig basin and stream by hand, common earth", "yd³", 0.58, {
        band: handDigging.common,
      }),
    ),
    ["open_dig", "by_soil", ...moved],
  ),
  task(
    "Wheel dirt, soil and topsoil",
    "haul",
    "dirt_wheeled",
    production("wheel", "Load, wheel and tip dirt, no distance counted", "yd³", 1.5, {
      source: "ILO/ASIST Technical Brief 2 (from memory), drawn back to no distance",
    }),
    ["by_haul"],
  ),
  task(
    "Load soil out",
    "haul",
    "haul_loads",
    withMachine(
      production("load-out", "Load a truck, spread a load", "load", 1.4),
      0.8,
      production("load-out-hand", "Load a truck by hand, ‹10 yd³|7.6 m³› loose", "load", 0.13, {
        band: { ...handLoading, least: handLoading.least / 10, most: handLoading.most / 10 },
      }),
    ),
    moved,
  ),
  task(
    `Fill around ${filled}, compact in lifts`,
    "backfill",
    "backfill",
    withMachine(
      production("backfill", "Fill around the basin, compact in lifts", "yd³", 2),
      0.3,
      production("backfill-hand", "Fill and compact by hand", "yd³", 1.3, { band: handFilling }),
    ),
    ["open_dig", ...moved],
  ),
  task(
    "Spread the topsoil kept",
    "topsoil",
    "strip_volume*topsoil_kept",
    withMachine(
      production("spread", "Spread the topsoil kept", "yd³", 2.5),
      0.5,
      production("spread-hand", "Rake out topsoil, wheeled in", "yd³", 1.5),
    ),
    moved,
  ),
];

/** What wheeling is held against: at several distances, with the haul factor by hand. */
export const wheelingBands = wheeling;
