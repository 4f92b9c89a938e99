import { pieceRows } from "../liner/pieces.js";
import { draftLine, heading, type PageLine } from "./page-lines.js";

const rows = (count: number, line: (row: number) => PageLine): PageLine[] =>
  Array.from({ length: count }, (_, i) => line(i + 1));

const falls = rows(12, (row) => ({
  says: `~•  {falls.name[${row}]} (step {falls.step[${row}]|0}): lip {falls.width[${row}]|2} wide, {falls.lip_kind[${row}]}, drop {falls.drop[${row}]|2}; the water lands {falls.leap[${row}]|2} out.`,
  when: `INDEX(falls.width,${row})>0`,
}));

const levels = rows(12, (row) => ({
  says: `~•  Water above step ${row}: {steps.level[${row}]|2} above the running basin.`,
  when: `INDEX(steps.in_use,${row})`,
}));

const reaches = rows(12, (row) => ({
  says: `~•  {reaches.name[${row}]}: {reaches.length[${row}]|1} long, bed {reaches.width[${row}]|1} wide, banks {reaches.bank_height[${row}]|1} high, falling {reaches.fall[${row}]|2}; {reaches.bed[${row}]}.`,
  when: `INDEX(reaches.length,${row})>0`,
}));

const pools = rows(6, (row) => ({
  says: `~•  {pools.name[${row}]}: {pools.length[${row}]|1} by {pools.width[${row}]|1}, {pools.depth[${row}]|1} deep below the lip of step {pools.before_step[${row}]|0}.`,
  when: `INDEX(pools.length,${row})>0`,
}));

const cuts = rows(pieceRows, (row) => ({
  says: `~•  {liner_pieces.name[${row}]}: {liner_pieces.cut[${row}]}`,
  when: `INDEX(liner_pieces.length,${row})>0`,
}));

const branches = rows(8, (row) => ({
  says: `~•  {outlets.name[${row}]}: {outlets.pipe_size[${row}]}, {outlets.length[${row}]|0}, {outlets.elbows_90[${row}]|0} elbows 90°, {outlets.elbows_45[${row}]|0} elbows 45°, leaves by {outlets.tee[${row}]}. Valve: {outlets.valve_words[${row}]}; flow to see: {outlets.flow_as_set[${row}]|0}.`,
  when: `LEN(INDEX(outlets.pipe_size,${row}))>0`,
}));

const stones = rows(6, (row) => ({
  says: `~•  {stones.name[${row}]}: {stones.tons[${row}]|1}, largest about {stones.heaviest[${row}]|0}.`,
  when: `INDEX(stones.tons,${row})>0`,
}));

const said = (table: string, count: number) =>
  rows(count, (row) => ({
    says: `~•  {${table}.said[${row}]}`,
    when: `LEN(INDEX(${table}.said,${row}))>0`,
  }));

/** What the crew builds from: set-out, dig, cuts, pipes, valves, stone, cautions. */
export const crewLines: readonly PageLine[] = [
  draftLine,
  {
    says: "~{job_title}, {site}. {crew_size|0} people, {work_days|0} of work, machine {machine_days|0}.",
  },
  heading("Before the first shovel"),
  { says: '"Call 811 and wait for the marks. Ask for private lines. Mark trees to be kept."' },
  { says: "~Ground mats: {ground_mats|0}.", when: "ground_mats>0" },
  {
    says: "~STOP: the dig is {deepest_dig|1} deep. Shore it, or slope its sides {safe_slope|1} to 1, before anyone goes in.",
    when: "NOT(dig_protected)",
  },
  {
    says: "~STOP: do not lift {load_on_hook|0} at {reach_needed|0}; the chart allows {machine_lift|0}. Bring a larger machine, or set from nearer.",
    when: "NOT(machine_lifts)",
  },
  heading("Set out"),
  ...falls,
  ...levels,
  ...reaches,
  ...pools,
  heading("Dig"),
  {
    says: "~•  Basin: {basin_length|1} by {basin_width|1} inside, {basin_depth|2} deep to the rim. Dig {dig_bottom_length|1} by {dig_bottom_width|1} at the bottom, {dig_top_length|1} by {dig_top_width|1} at the top, {dig_depth|2} deep.",
  },
  {
    says: "~•  Pipe trench: {trench_length|0}, {trench_width|0} wide, {trench_depth|0} deep.",
    when: "trench_length>0",
  },
  {
    says: "~•  Deepest dig {deepest_dig|1}. From {protection_depth|0} on, or with any sign of a cave-in, nobody goes in without protection; a competent person decides.",
  },
  { says: "~•  Spoil stays {spoil_setback|0} back from every edge." },
  { says: "~•  Haul away {haul_volume|0} loose, {haul_loads|0} loads.", when: "haul_loads>0" },
  ...said("berm_lines", 4),
  ...said("tree_lines", 6),
  ...said("wall_lines", 4),
  heading("Basin"),
  {
    says: "~•  Crates: {crate_columns|0} along, {crate_rows|0} across, {crate_layers|0} high, less the places of the vault: {crates_needed|0} in all. Pump vaults: {vaults_needed|0}.",
  },
  { says: "~•  Stone {crate_gap|0} around the crates and at least {crate_cover|0} over them." },
  { says: "~•  Full line {full_below_rim|0} below the rim. {overflow_words}" },
  {
    says: "~•  Fill line: mouth {air_gap|1} above the rim, so that basin water cannot be drawn back.",
    when: "fill_line_length>0",
  },
  heading("Liner"),
  { says: '"Measure the finished dig before cutting."' },
  ...cuts,
  {
    says: "~•  Heaviest cut {liner_weight_heaviest|0}: {liner_people|0} people, or the machine.",
  },
  heading("Pipe and valves"),
  {
    says: "~•  Main: {main_size}, {main_length|0}, {main_elbows_90|0} elbows 90°, {main_elbows_45|0} elbows 45°. Begins with: {main_entrance}.",
  },
  { says: '"•  A check valve goes into the main."', when: "check_valve_fitted" },
  ...branches,
  { says: "~•  Pump: {pump_description}, speed {pump_speed|0}." },
  {
    says: '"•  Bulkhead gasket on the water side; sweep of a tee along the flow. Set the flows finally by eye and meter."',
  },
  heading("Stone"),
  ...stones,
  {
    says: "~•  Heaviest lift {load_on_hook|0} at {reach_needed|0}: the chart allows {machine_lift|0}. Nobody under the load.",
  },
  heading("Cautions"),
  {
    says: '"Electrical work by a licensed electrician: ground-fault protection, no splices under water, power off while hands are in the basin."',
  },
  { says: '"Cover or fence the open basin at night."' },
];
