import { production } from "../rates.js";
import { type Task, task } from "../task.js";

export const earthworkTasks: readonly Task[] = [
  task(
    "Strip topsoil",
    "strip",
    "strip_volume",
    production("strip", "Strip topsoil", "yd3"),
    ["by_access", "by_haul"],
    0.5,
  ),
  task(
    "Dig basin and stream",
    "dig",
    "dig_volume",
    production("dig", "Dig basin and stream", "yd3"),
    ["open_dig", "by_access", "by_haul", "by_soil"],
    0.5,
  ),
  task(
    "Load soil out",
    "haul",
    "haul_loads",
    production("load-out", "Load a truck, spread a load", "load"),
    ["by_access", "by_haul"],
    0.8,
  ),
  task(
    "Fill around basin and pools, compact in lifts",
    "backfill",
    "basin_backfill+pool_backfill",
    production("backfill", "Fill around the basin, compact in lifts", "yd3"),
    ["open_dig", "by_access", "by_haul"],
    0.3,
  ),
  task(
    "Spread the topsoil kept",
    "topsoil",
    "strip_volume*topsoil_kept",
    production("spread", "Spread the topsoil kept", "yd3"),
    ["by_access", "by_haul"],
    0.5,
  ),
];
