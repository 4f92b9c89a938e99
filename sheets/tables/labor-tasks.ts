import type { TradeUnit } from "./trade-units.js";

/** A task of the crew: what drives it, its production rate, and what slows it. */
export interface Task {
  readonly task: string;
  /** A formula for the quantity: a length, an area, a weight … as `unit` is one, or a count. */
  readonly quantity: string;
  readonly unit: TradeUnit;
  readonly rate_code: string;
  /** Share of the labor hours spent in the machine's seat. */
  readonly machine_share: number;
  readonly by_access?: boolean;
  readonly by_haul?: boolean;
  readonly by_soil?: boolean;
  /** A dig stands open while it is done, and is inspected. */
  readonly open_dig?: boolean;
}

const outlets = "SUMPRODUCT((pipe_lines.bore>0)*1)";
const falls = "SUMPRODUCT((falls.width>0)*1)";

/**
 * Every task that the quantities drive, in the order in which it is built: the crew works down
 * this list. Shares of machine time: common practice, no source.
 */
export const laborTasks: readonly Task[] = [
  {
    task: "Set out and protect the site",
    quantity: "1",
    unit: "each",
    rate_code: "set-out",
    machine_share: 0,
  },
  {
    task: "Strip topsoil",
    quantity: "strip_volume",
    unit: "yd3",
    rate_code: "strip",
    machine_share: 0.5,
    by_access: true,
    by_haul: true,
  },
  {
    task: "Dig footings of walls, lay their base",
    quantity: "wall_base",
    unit: "yd3",
    rate_code: "wall-base",
    machine_share: 0.4,
    open_dig: true,
    by_access: true,
    by_haul: true,
    by_soil: true,
  },
  {
    task: "Build walls",
    quantity: "wall_face",
    unit: "ft2",
    rate_code: "wall-built",
    machine_share: 0.1,
    by_access: true,
    by_haul: true,
  },
  {
    task: "Dig basin and stream",
    quantity: "dig_volume",
    unit: "yd3",
    rate_code: "dig",
    machine_share: 0.5,
    open_dig: true,
    by_access: true,
    by_haul: true,
    by_soil: true,
  },
  {
    task: "Set shoring and pull it again",
    quantity: "shored_face",
    unit: "ft2",
    rate_code: "shoring-set",
    machine_share: 0.3,
    open_dig: true,
    by_access: true,
  },
  {
    task: "Build the berm",
    quantity: "berm_volume",
    unit: "yd3",
    rate_code: "berm",
    machine_share: 0.5,
    by_access: true,
    by_haul: true,
  },
  {
    task: "Load soil out",
    quantity: "haul_loads",
    unit: "load",
    rate_code: "load-out",
    machine_share: 0.8,
    by_access: true,
    by_haul: true,
  },
  {
    task: "Dig the pipe trench, fill it after the pipe",
    quantity: "trench_effort",
    unit: "yd3",
    rate_code: "trench",
    machine_share: 0.4,
    open_dig: true,
    by_access: true,
    by_soil: true,
  },
  {
    task: "Dig narrow trenches, fill them after the pipe",
    quantity: "narrow_effort",
    unit: "yd3",
    rate_code: "trench-narrow",
    machine_share: 0.2,
    open_dig: true,
    by_access: true,
    by_soil: true,
  },
  {
    task: "Spread bedding of basin and trenches",
    quantity: "bedding_volume+trench_bedding",
    unit: "yd3",
    rate_code: "bedding-laid",
    machine_share: 0,
    open_dig: true,
    by_access: true,
    by_haul: true,
  },
  {
    task: "Lay liner and underlayment",
    quantity: "liner_area_bought",
    unit: "ft2",
    rate_code: "liner-laid",
    machine_share: 0.1,
    open_dig: true,
    by_access: true,
  },
  {
    task: "Make seams",
    quantity: "seam_length",
    unit: "ft",
    rate_code: "seam-made",
    machine_share: 0,
  },
  {
    task: "Set crates and vault",
    quantity: "crates_needed+vaults_needed",
    unit: "each",
    rate_code: "crate-set",
    machine_share: 0,
    open_dig: true,
    by_access: true,
  },
  {
    task: "Lay the main",
    quantity: "main_length",
    unit: "ft",
    rate_code: "pipe-laid",
    machine_share: 0,
  },
  {
    task: "Lay the branches",
    quantity: "SUM(pipe_lines.length)",
    unit: "ft",
    rate_code: "pipe-laid",
    machine_share: 0,
  },
  {
    task: "Fit outlets and valves",
    quantity: outlets,
    unit: "each",
    rate_code: "outlet-fitted",
    machine_share: 0,
  },
  {
    task: "Lay the fill line",
    quantity: "fill_line_length",
    unit: "ft",
    rate_code: "fill-line-laid",
    machine_share: 0,
  },
  {
    task: "Run conduit and wire to the pump",
    quantity: 'IF(electrical_work="by us",panel_distance,0)',
    unit: "ft",
    rate_code: "conduit-run",
    machine_share: 0,
  },
  {
    task: "Fill around basin and pools, compact in lifts",
    quantity: "basin_backfill+pool_backfill",
    unit: "yd3",
    rate_code: "backfill",
    machine_share: 0.3,
    open_dig: true,
    by_access: true,
    by_haul: true,
  },
  {
    task: "Build the falls",
    quantity: falls,
    unit: "each",
    rate_code: "fall-built",
    machine_share: 0.2,
    by_access: true,
  },
  {
    task: "Set stone",
    quantity: "stone_tons",
    unit: "ton",
    rate_code: "stone-set",
    machine_share: 0.4,
    by_access: true,
    by_haul: true,
  },
  {
    task: "Mix and lay mortar of the beds",
    quantity: "bed_mortar",
    unit: "yd3",
    rate_code: "mortar-laid",
    machine_share: 0,
    by_access: true,
    by_haul: true,
  },
  {
    task: "Fit lights with their cable",
    quantity: "lights_wanted",
    unit: "each",
    rate_code: "light-fitted",
    machine_share: 0,
  },
  {
    task: "Fit breaker and outlet, test the circuit",
    quantity: 'IF(electrical_work="by us",1,0)',
    unit: "each",
    rate_code: "circuit-fitted",
    machine_share: 0,
  },
  {
    task: "Set the pump, fill, tune the valves",
    quantity: "1",
    unit: "each",
    rate_code: "start-up",
    machine_share: 0,
  },
  {
    task: "Spread the topsoil kept",
    quantity: "strip_volume*topsoil_kept",
    unit: "yd3",
    rate_code: "spread",
    machine_share: 0.5,
    by_access: true,
    by_haul: true,
  },
  {
    task: "Clean up and hand over",
    quantity: "1",
    unit: "each",
    rate_code: "clean-up",
    machine_share: 0.2,
  },
];
