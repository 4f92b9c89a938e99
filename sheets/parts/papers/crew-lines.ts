import { laborTasks } from "../../tables/labor-tasks.js";
import { placeRows } from "../digging-safety/places.js";
import { pieceRows } from "../liner/pieces.js";
import { stoneRows } from "../stone/classes.js";
import { trenchRows } from "../trench/trenches.js";
import { draftLine, heading, type PageLine, rows } from "./page-lines.js";
import { counted } from "./words.js";

const falls = rows(12, (row) => ({
  says: `~•  {falls.name[${row}]} (step {falls.level[${row}]|0}): lip {falls.width[${row}]} wide, {falls.lip_type[${row}]}, drop {falls.drop[${row}]}; the water lands {falls.throw[${row}]} out.`,
  when: `INDEX(falls.width,${row})>0`,
}));

/** Lips that share a level: the one with less water over it stands higher. */
const lips = rows(12, (row) => ({
  says: `~•  {falls.name[${row}]}: its lip {IF(ROUND(INDEX(falls.lip_raised,${row})/0.125[in],0)=0,"is the lowest","stands "&INDEX(lip_said.raised,${row})&" above the lowest")} of step {falls.level[${row}]|0}.`,
  when: `INDEX(falls.lips_beside,${row})>0`,
}));

const levels = rows(12, (row) => ({
  says: `~•  Water above step ${row}: {levels.height[${row}]} above the running basin.`,
  when: `INDEX(levels.in_use,${row})`,
}));

const reaches = rows(12, (row) => ({
  says: `~•  {runs.name[${row}]}: {runs.length[${row}]} long, bed {runs.width[${row}]} wide, banks {runs.bank_height[${row}]|up} high, falling {runs.fall[${row}]}; {runs.bed[${row}]}. Water about {runs.depth_likely[${row}]} deep, up to {runs.depth[${row}]|up}.`,
  when: `INDEX(runs.length,${row})>0`,
}));

const pools = rows(6, (row) => ({
  says: `~•  {pools.name[${row}]}: {pools.length[${row}]} by {pools.width[${row}]}, {pools.depth[${row}]} deep below the lip of step {pools.before_level[${row}]|0}.`,
  when: `INDEX(pools.length,${row})>0`,
}));

const cuts = rows(pieceRows, (row) => ({
  says: `~•  {liner_pieces.name[${row}]}: finished {liner_pieces.length[${row}]|up} x {liner_pieces.width[${row}]|up}; cut {liner_pieces.cut[${row}]}.`,
  when: `INDEX(liner_pieces.length,${row})>0`,
}));

const branches = rows(8, (row) => ({
  says: `~•  {pipe_lines.name[${row}]}: {pipe_lines.pipe_size[${row}]}, {pipe_lines.length[${row}]}, {pipe_lines.elbows_90[${row}]|0} elbows 90°, {pipe_lines.elbows_45[${row}]|0} elbows 45°, leaves by {pipe_lines.tee[${row}]}. Valve: {pipe_lines.valve_words[${row}]}; flow to see: {pipe_lines.actual_flow[${row}]|0}.`,
  when: `LEN(INDEX(pipe_lines.pipe_size,${row}))>0`,
}));

const siphons = rows(8, (row) => ({
  says: `~•  {pipe_lines.name[${row}]}: {pipe_lines.siphon_words[${row}]}.`,
  when: `LEN(INDEX(pipe_lines.siphon_words,${row}))>0`,
}));

const raisedPots = rows(8, (row) => ({
  says: `~•  {pipe_lines.name[${row}]}: set its pot so that its water stands {pipe_lines.pot_rise[${row}]} above the water of level {pipe_lines.outlet_level[${row}]|0}.`,
  when: `INDEX(pipe_lines.pot_rise,${row})>0`,
}));

const stones = rows(stoneRows, (row) => ({
  says: `~•  {stones.name[${row}]}: {stones.tons[${row}]|1}{IF(ROUND(INDEX(stones.heaviest,${row})/1[‹lb|kg›],0)>=1,", largest about "&INDEX(stone_said.heaviest,${row}),"")}.`,
  when: `INDEX(stones.tons,${row})>0`,
}));

const said = (table: string, count: number) =>
  rows(count, (row) => ({
    says: `~•  {${table}.said[${row}]}`,
    when: `LEN(INDEX(${table}.said,${row}))>0`,
  }));

/** An order to stop for each row of a table whose check fails. */
const stops = (table: string, check: string, count: number, says: (row: number) => string) =>
  rows(count, (row) => ({
    says: `~STOP. ${says(row)}`,
    when: `NOT(INDEX(${table}.${check},${row}))`,
  }));

const safetyStops: readonly PageLine[] = [
  {
    says: "~STOP. Do not lift {load_on_hook|0} at {working_radius|up} yet: this bid holds an example's lifting chart. Ask for the chart of the machine itself.",
    when: "AND(heaviest_stone>0,NOT(chart_confirmed))",
  },
  {
    says: "~STOP. Do not lift: {load_on_hook|0} at {working_radius|up}, the chart of {chart_machine} allows {lift_said}. Bring a larger machine or set from nearer.",
    when: "AND(chart_confirmed,NOT(machine_lifts))",
  },
  {
    says: "~STOP. Nobody goes into {digs_to_inspect} until a competent person has looked for signs of a cave-in, that day, and has signed: name ________________  date ____________  signs: yes / no.",
    when: "NOT(dig_inspected)",
  },
  ...stops(
    "digs",
    "protected",
    placeRows,
    (row) =>
      `{digs.place[${row}]} is dug {digs.deep[${row}]|up} deep in soil {dig_soil_type}, protection: {digs.by[${row}]}. Shore it, shield it, or slope it {safe_slope} to 1 before anyone goes in.`,
  ),
  {
    says: "~STOP. {deepest_dig|up} deep: over {engineer_depth|down} an engineer designs the protection. Do not dig before.",
    when: "NOT(dig_within_tables)",
  },
  {
    says: "~STOP. Ladders or ramps: {ladders_needed|0} are needed, none farther than {ladder_travel|down} from anyone in the dig; the plan brings {ladders_brought|0}.",
    when: "NOT(ladders_enough)",
  },
  {
    says: "~STOP. Spoil is planned {dirt_setback|down} from the edge: it stays {dirt_setback_least|up} back.",
    when: "NOT(dirt_set_back)",
  },
  ...stops(
    "trees",
    "kept",
    6,
    (row) =>
      `{trees.name[${row}]}: {trees.fill_planned[${row}]|up} of fill is planned, {trees.fill_allowed[${row}]|down} is allowed. No fill there before a wall holds it.`,
  ),
  ...stops(
    "walls",
    "permitted",
    4,
    (row) =>
      `{walls.name[${row}]}: {walls.code_height[${row}]|up} from foot to top, or with a load behind it, needs a permit and an engineer. Do not build before both are here.`,
  ),
  ...stops(
    "berms",
    "stands",
    4,
    (row) =>
      `{berms.name[${row}]}: a side at {berms.steepest[${row}]|1} to 1 is steeper than this soil stands, {fill_slope|1} to 1. Flatten it, or wait for a wall or a design that holds it.`,
  ),
  ...stops(
    "pools",
    "fenced",
    6,
    (row) =>
      `{pools.name[${row}]}: water {pools.water_depth[${row}]|up} deep. Do not fill it before the barrier that the authority wants is agreed.`,
  ),
];

const tasks = rows(laborTasks.length, (row) => ({
  says: `~•  {tasks.task[${row}]}: {tasks.hours[${row}]|1}`,
  when: `INDEX(tasks.hours,${row})>0`,
}));

const ownTasks = rows(6, (row) => ({
  says: `~•  {additional_tasks.task[${row}]}: {additional_tasks.hours[${row}]|1}`,
  when: `INDEX(additional_tasks.hours,${row})>0`,
}));

const ground: readonly PageLine[] = [
  heading("Strip and dig"),
  {
    says: "~•  Topsoil: strip {strip_depth|0}, keep {topsoil_kept|0} of {strip_volume|0} on a heap of its own.",
    when: "strip_volume>0",
  },
  {
    says: "~•  Basin: {basin_length|up} by {basin_width|up} inside, {basin_depth|up} deep to the rim. Dig {dig_bottom_length|up} by {dig_bottom_width|up} at the bottom, {dig_top_length|up} by {dig_top_width|up} at the top, {dig_depth|up} deep.",
  },
  ...said("trench_lines", trenchRows),
  {
    says: "~•  Shore or shield {shored_face|0} of face before anyone goes in; pull it as the dig is filled.",
    when: "shored_face>0",
  },
  {
    says: "~•  Deepest dig: {deepest_place}, {deepest_dig|up}. From {protection_depth|down} on, or with any sign of a cave-in, nobody goes in without protection; a competent person decides.",
  },
  {
    says: "~•  {dig_inspected_by} looked on {dig_inspected_on_said}: {cave_in_signs} of a cave-in. Look again each day before work and after every rain.",
    when: "AND(LEN(digs_to_inspect)>0,inspection_recorded)",
  },
  { says: "~•  Spoil stays {dirt_setback|up} back from every edge." },
  {
    says: '~•  Haul away {haul_volume|0} loose, {haul_loads|0} {IF(haul_loads=1,"load","loads")}.',
    when: "haul_loads>0",
  },
  { says: "~•  Soil to bring in: {import_volume|1} loose.", when: "import_volume>0" },
  heading("Walls", "wall_face>0"),
  {
    says: "~•  Gravel base {wall_base_depth|0|up} deep, {wall_base_margin|0|up} wider than the wall on each side. Leave the water behind a wall a way out.",
    when: "wall_face>0",
  },
  ...said("wall_lines", 4),
  heading("Berm", "berm_volume>0"),
  ...said("berm_lines", 4),
  {
    says: '"•  Build the berm in thin layers, each compacted before the next; no topsoil, sod or roots in it. Walls that hold it stand first."',
    when: "berm_volume>0",
  },
];

const liner: readonly PageLine[] = [
  heading("Liner"),
  { says: '"•  Measure the finished dig, tape along the ground, before anything is cut."' },
  ...cuts,
  {
    says: "~•  Underlayment under all of it: {underlayment_area|0}. Seams: {seam_length}, laps {seam_lap|up} wide.",
    when: "seam_length>0",
  },
  {
    says: "~•  Underlayment under all of it: {underlayment_area|0}. No seams.",
    when: "seam_length<=0",
  },
  {
    says: `~•  Heaviest cut {liner_weight_heaviest|0}: {${counted("liner_people", "person", "people")}}, or the machine.`,
  },
  { says: '"•  Fill and watch the level before stone covers the liner."' },
];

const basin: readonly PageLine[] = [
  heading("Basin"),
  {
    says: "~•  Crates: {crate_columns|0} along, {crate_rows|0} across, {crate_layers|0} high, less the places of the vault: {crates_needed|0} in all. Pump vaults: {vaults_needed|0}.",
  },
  { says: "~•  Stone {crate_gap|0} around the crates and at least {crate_cover|0|up} over them." },
  {
    says: "~•  Full line {basin_freeboard|up} below the rim, {level_at_rest} above the bottom at rest; running, the level falls by {basin_falls_by}.",
  },
  {
    says: "~•  Fill float: while the pump runs it shuts at {float_below_rim|up} below the rim. Never nearer than {float_least_below_rim|up}, or a stop spills.",
    when: "fill_line_length>0",
  },
  {
    says: "~•  In the design storm of {design_rain}, {rain_overflow|0} spill over at {overflow_place}. Line that way out with stone, so that it does not wash out.",
    when: "AND(storm_is_local,rain_overflow>0)",
  },
  {
    says: "~•  In heavy rain the basin spills over at {overflow_place}. Line that way out with stone, so that it does not wash out.",
    when: "OR(NOT(storm_is_local),rain_overflow<=0)",
  },
];

const pipe: readonly PageLine[] = [
  heading("Pipe and valves"),
  {
    says: "~•  Main: {main_size} pipe, {main_length}, {main_elbows_90|0} elbows 90°, {main_elbows_45|0} elbows 45°. Begins with: {inlet_fitting}.",
  },
  { says: '"•  A check valve goes into the main."', when: "check_valve_fitted" },
  ...branches,
  ...siphons,
  ...raisedPots,
  { says: '"•  Bulkhead gasket on the water side; sweep of a tee along the flow."' },
  {
    says: "~•  Fill line: {fill_line_length} of pipe; its mouth {air_gap|up} above the rim, so that basin water cannot be drawn back.",
    when: "fill_line_length>0",
  },
  {
    says: "~•  Circuit to the pump, by our licensed electrician: {panel_distance|0} of conduit, wire {wire_size}, breaker of {breaker_rating|0}, ground-fault protected outlet.",
    when: 'electrical_work="by us"',
  },
  {
    says: `~•  Lights: {${counted("lights_wanted", "light", "lights")}}, {lights_load|0} in all, on {${counted("transformers_needed", "transformer", "transformers")}} of {transformer_rating|0}.`,
    when: "lights_wanted>0",
  },
  heading("Backfill"),
  {
    says: '"•  Fill the trenches in thin layers, once the pipes have held water."',
    when: "trench_volume>0",
  },
  {
    says: '"•  Fill around basin and pools in thin layers, once the liner has held water."',
    when: "basin_backfill+pool_backfill>0",
  },
];

const finish: readonly PageLine[] = [
  heading("Stone"),
  ...stones,
  {
    says: "~•  Heaviest lift {load_on_hook|0} at {working_radius|up}: the chart of {chart_machine} allows {machine_lift|0}. Nobody under the load.",
    when: "AND(heaviest_stone>0,chart_confirmed,machine_lifts)",
  },
  {
    says: "~•  Heaviest lift {load_on_hook|0} at {working_radius|up}, rigging counted. Nobody under the load.",
    when: "AND(heaviest_stone>0,NOT(AND(chart_confirmed,machine_lifts)))",
  },
  heading("Pump and first water"),
  {
    says: `~•  Pump {pump_code}: {pump_description}, outlet {INDEX(pumps.outlet_size,pump_row)}.`,
    when: "pump_row>0",
  },
  {
    says: "~•  Set its controller to {pump_speed|0} of full speed.",
    when: "AND(pump_row>0,ROUND(pump_speed,3)<1)",
  },
  { says: '"•  Set the flows finally by eye and meter."' },
];

/** What the crew builds from, in the order in which it is built; then hours and cautions. */
export const crewLines: readonly PageLine[] = [
  draftLine,
  ...safetyStops,
  {
    says: `~{job_title}, {site}. {${counted("crew_size", "person", "people")}}, {work_days|0} of work, machine {machine_days|0}.`,
  },
  heading("Before the first shovel"),
  { says: '"Call 811 and wait for the marks. Ask for private lines. Mark trees to be kept."' },
  { says: "~Ground mats: {ground_mats|0}.", when: "ground_mats>0" },
  ...said("tree_lines", 6),
  heading("Set out"),
  ...falls,
  ...lips,
  ...levels,
  ...reaches,
  ...pools,
  ...ground,
  ...liner,
  ...basin,
  ...pipe,
  ...finish,
  heading("Order of work, hours of one person"),
  ...tasks,
  ...ownTasks,
  {
    says: "~•  Inspect the digs, each day before work and after every rain: {inspection_hours|1}",
    when: "inspection_hours>0",
  },
  heading("Cautions"),
  {
    says: '"Electrical work by a licensed electrician: ground-fault protection, no splices under water, power off while hands are in the basin."',
  },
  { says: '"Cover or fence the open basin at night."' },
  { says: "child_caution", when: "LEN(child_caution)>0" },
];
