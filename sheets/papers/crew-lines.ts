import { placeRows } from "../ground/places.js";
import { trenchRows } from "../ground/trenches.js";
import { pieceRows } from "../liner/pieces.js";
import { stoneRows } from "../stone/classes.js";
import { laborTasks } from "../tables/labor-tasks.js";
import { draftLine, heading, type PageLine, rows } from "./page-lines.js";
import { counted } from "./words.js";

const falls = rows(12, (row) => ({
  says: `~•  {falls.name[${row}]} (step {falls.step[${row}]|0}): lip {falls.width[${row}]|2} wide, {falls.lip_kind[${row}]}, drop {falls.drop[${row}]|2}; the water lands {falls.leap[${row}]|2} out.`,
  when: `INDEX(falls.width,${row})>0`,
}));

const levels = rows(12, (row) => ({
  says: `~•  Water above step ${row}: {steps.level[${row}]|2} above the running basin.`,
  when: `INDEX(steps.in_use,${row})`,
}));

const reaches = rows(12, (row) => ({
  says: `~•  {reaches.name[${row}]}: {reaches.length[${row}]|1} long, bed {reaches.width[${row}]|1} wide, banks {reaches.bank_height[${row}]|1} high, falling {reaches.fall[${row}]|2}; {reaches.bed[${row}]}. Water about {reaches.depth_likely[${row}]|1} deep, up to {reaches.depth[${row}]|1}.`,
  when: `INDEX(reaches.length,${row})>0`,
}));

const pools = rows(6, (row) => ({
  says: `~•  {pools.name[${row}]}: {pools.length[${row}]|1} by {pools.width[${row}]|1}, {pools.depth[${row}]|1} deep below the lip of step {pools.before_step[${row}]|0}.`,
  when: `INDEX(pools.length,${row})>0`,
}));

const cuts = rows(pieceRows, (row) => ({
  says: `~•  {liner_pieces.name[${row}]}: finished {liner_pieces.length[${row}]|1} x {liner_pieces.width[${row}]|1}; cut {liner_pieces.cut[${row}]}.`,
  when: `INDEX(liner_pieces.length,${row})>0`,
}));

const branches = rows(8, (row) => ({
  says: `~•  {outlets.name[${row}]}: {outlets.pipe_size[${row}]}, {outlets.length[${row}]|0}, {outlets.elbows_90[${row}]|0} elbows 90°, {outlets.elbows_45[${row}]|0} elbows 45°, leaves by {outlets.tee[${row}]}. Valve: {outlets.valve_words[${row}]}; flow to see: {outlets.flow_as_set[${row}]|0}.`,
  when: `LEN(INDEX(outlets.pipe_size,${row}))>0`,
}));

const stones = rows(stoneRows, (row) => ({
  says: `~•  {stones.name[${row}]}: {stones.tons[${row}]|1}{IF(ROUND(INDEX(stones.heaviest,${row})/1[lb],0)>=1,", largest about ","")}{IF(ROUND(INDEX(stones.heaviest,${row})/1[lb],0)>=1,INDEX(stone_said.heaviest,${row}),"")}.`,
  when: `INDEX(stones.tons,${row})>0`,
}));

const said = (table: string, count: number) =>
  rows(count, (row) => ({
    says: `~•  {${table}.said[${row}]}`,
    when: `LEN(INDEX(${table}.said,${row}))>0`,
  }));

/** A check of each row of a table, where it fails: its own message, as an order to stop. */
const stops = (table: string, check: string, count: number) =>
  rows(count, (row) => ({
    says: `"STOP. "&INDEX(${table}.${check}_message,${row})`,
    when: `NOT(INDEX(${table}.${check},${row}))`,
  }));

const tasks = rows(laborTasks.length, (row) => ({
  says: `~•  {tasks.task[${row}]}: {tasks.hours[${row}]|1}`,
  when: `INDEX(tasks.hours,${row})>0`,
}));

const ownTasks = rows(6, (row) => ({
  says: `~•  {own_tasks.own_task[${row}]}: {own_tasks.own_hours[${row}]|1}`,
  when: `INDEX(own_tasks.own_hours,${row})>0`,
}));

/** What the crew builds from: set-out, dig, cuts, pipes, valves, stone, hours, cautions. */
export const crewLines: readonly PageLine[] = [
  draftLine,
  {
    says: "~STOP. Do not lift {load_on_hook|0} at {reach_needed|0} yet: this bid holds an example's lifting chart. Ask for the chart of the machine itself.",
    when: "AND(heaviest_stone>0,NOT(chart_taken_over))",
  },
  {
    says: "~STOP. Do not lift: {load_on_hook|0} at {reach_needed|0}, the chart of {chart_machine} allows {machine_lift|0}. Bring a larger machine or set from nearer.",
    when: "AND(chart_taken_over,NOT(machine_lifts))",
  },
  {
    says: "~STOP. Nobody goes into {places_watched} until a competent person has looked for signs of a cave-in, that day, and has signed: name ________________  date ____________  signs: yes / no.",
    when: "NOT(dig_looked_at)",
  },
  ...stops("places_dug", "protected", placeRows),
  { says: '"STOP. "&dig_within_tables_message', when: "NOT(dig_within_tables)" },
  { says: '"STOP. "&ladders_enough_message', when: "NOT(ladders_enough)" },
  { says: '"STOP. "&spoil_back_message', when: "NOT(spoil_back)" },
  ...stops("trees", "kept", 6),
  ...stops("walls", "permitted", 4),
  ...stops("berms", "stands", 4),
  ...stops("pools", "fenced", 6),
  {
    says: `~{job_title}, {site}. {${counted("crew_size", "person", "people")}}, {work_days|0} of work, machine {machine_days|0}.`,
  },
  heading("Before the first shovel"),
  { says: '"Call 811 and wait for the marks. Ask for private lines. Mark trees to be kept."' },
  { says: "~Ground mats: {ground_mats|0}.", when: "ground_mats>0" },
  heading("Set out"),
  ...falls,
  ...levels,
  ...reaches,
  ...pools,
  heading("Dig and fill"),
  {
    says: "~•  Basin: {basin_length|1} by {basin_width|1} inside, {basin_depth|2} deep to the rim. Dig {dig_bottom_length|1} by {dig_bottom_width|1} at the bottom, {dig_top_length|1} by {dig_top_width|1} at the top, {dig_depth|2} deep.",
  },
  ...said("trench_lines", trenchRows),
  {
    says: "~•  Deepest dig: {deepest_place}, {deepest_dig|1}. From {protection_depth|0} on, or with any sign of a cave-in, nobody goes in without protection; a competent person decides.",
  },
  {
    says: "~•  {dig_looked_by} looked on {dig_looked_said}: {dig_look} of a cave-in. Look again each day before work and after every rain.",
    when: "AND(LEN(places_watched)>0,look_recorded)",
  },
  { says: "~•  Spoil stays {spoil_setback|0} back from every edge." },
  {
    says: "~•  Topsoil: strip {strip_depth|0}, keep {topsoil_kept|0} of {strip_volume|0} on a heap of its own.",
    when: "strip_volume>0",
  },
  {
    says: "~•  Soil to bring in: {import_volume|1} loose.",
    when: "import_volume>0",
  },
  {
    says: "~•  Haul away {haul_volume|0} loose, {haul_loads|0} loads.",
    when: "haul_loads>0",
  },
  ...said("berm_lines", 4),
  {
    says: '"•  Build the berm in thin layers, each compacted before the next; no topsoil, sod or roots in it."',
    when: "berm_volume>0",
  },
  ...said("tree_lines", 6),
  ...said("wall_lines", 4),
  {
    says: "~•  Walls: gravel base {wall_base_depth|0} deep, {wall_base_margin|0} wider than the wall on each side. Leave the water behind a wall a way out.",
    when: "wall_face>0",
  },
  heading("Basin"),
  {
    says: "~•  Crates: {crate_columns|0} along, {crate_rows|0} across, {crate_layers|0} high, less the places of the vault: {crates_needed|0} in all. Pump vaults: {vaults_needed|0}.",
  },
  { says: "~•  Stone {crate_gap|0} around the crates and at least {crate_cover|0} over them." },
  {
    says: "~•  Full line {full_below_rim|0} below the rim, {level_at_rest|2} above the bottom at rest; running, the level falls by {basin_falls_by|2}.",
  },
  { says: "~•  {overflow_words}. Line that way out with stone, so that it does not wash out." },
  {
    says: "~•  Fill line: {fill_line_length|0} of pipe; its mouth {air_gap|1} above the rim, so that basin water cannot be drawn back.",
    when: "fill_line_length>0",
  },
  heading("Liner"),
  { says: '"•  Measure the finished dig, tape along the ground, before anything is cut."' },
  ...cuts,
  {
    says: "~•  Underlayment under all of it: {underlayment_area|0}. Seams: {seam_length|0}, laps {seam_lap|2} wide.",
    when: "seam_length>0",
  },
  {
    says: "~•  Underlayment under all of it: {underlayment_area|0}. No seams.",
    when: "seam_length<=0",
  },
  {
    says: `~•  Heaviest cut {liner_weight_heaviest|0}: {${counted("liner_people", "person", "people")}}, or the machine.`,
  },
  {
    says: '"•  Fill and watch the level before stone covers the liner."',
  },
  heading("Pipe, pump and valves"),
  {
    says: "~•  Main: {main_size} pipe, {main_length|0}, {main_elbows_90|0} elbows 90°, {main_elbows_45|0} elbows 45°. Begins with: {main_entrance}.",
  },
  { says: '"•  A check valve goes into the main."', when: "check_valve_fitted" },
  ...branches,
  {
    says: `~•  Pump {pump_code}: {pump_description}, outlet {IFERROR(INDEX(pumps.outlet_size,pump_row),"")}.`,
    when: "pump_row>0",
  },
  {
    says: "~•  Set its controller to {pump_speed|0} of full speed.",
    when: "AND(pump_row>0,ROUND(pump_speed,3)<1)",
  },
  {
    says: '"•  Bulkhead gasket on the water side; sweep of a tee along the flow. Set the flows finally by eye and meter."',
  },
  heading("Stone"),
  ...stones,
  {
    says: "~•  Heaviest lift {load_on_hook|0} at {reach_needed|0}: the chart of {chart_machine} allows {machine_lift|0}. Nobody under the load.",
    when: "AND(heaviest_stone>0,chart_taken_over,machine_lifts)",
  },
  {
    says: "~•  Heaviest lift {load_on_hook|0} at {reach_needed|0}, rigging counted. Nobody under the load.",
    when: "AND(heaviest_stone>0,NOT(AND(chart_taken_over,machine_lifts)))",
  },
  heading("Order of work, hours of one person"),
  ...tasks,
  ...ownTasks,
  heading("Cautions"),
  {
    says: '"Electrical work by a licensed electrician: ground-fault protection, no splices under water, power off while hands are in the basin."',
  },
  { says: '"Cover or fence the open basin at night."' },
  { says: "child_caution", when: "LEN(child_caution)>0" },
];
