import {
  angle,
  bore,
  calc,
  check,
  count,
  flow,
  head,
  input,
  length,
  number,
  percent,
  precise,
  speed,
  table,
  text,
  waterVolume,
} from "../../engine/template/index.js";

const sizeAt = (column: string) =>
  `INDEX(pipe_sizes.${column},IFERROR(MATCH(pipe_size,pipe_sizes.size,0),1))`;
const row = (column: string, at: string) => `INDEX(valve_opening.${column},${at})`;
const eighths = [
  '"fully open"',
  '"an eighth closed"',
  '"a quarter closed"',
  '"three eighths closed"',
  '"half closed"',
  '"five eighths closed"',
  '"three quarters closed"',
  '"seven eighths closed"',
  '"closed"',
].join(",");

/** One row for each branch: where it delivers, its pipe, its valve. */
export const outletsTable = table(
  "outlets",
  "Outlets: one branch of the manifold each",
  {
    rows: 8,
    opening: 1,
    filled: "LEN(pipe_size)>0",
    note: "A row is in use when it has a pipe size. Each branch has a ball valve.",
  },
  {
    name: input(text, "Outlet", { default: "Outlet" }),
    enters: input(count, "Enters at step", { default: 1, least: 1, most: 12, whole: true }),
    pipe_size: input(text, "Pipe size", { choices: "pipe_sizes.size" }),
    length: input(length, "Length of branch", { default: 10, least: 0, most: 1000 }),
    tee: input(text, "Leaves the manifold by", { default: "square tee", choices: "tees.name" }),
    elbows_90: input(count, "90° elbows", { default: 2, least: 0, most: 50, whole: true }),
    elbows_45: input(count, "45° elbows", { default: 0, least: 0, most: 50, whole: true }),
    extra_loss: input(number, "K of other fittings", {
      default: 0,
      least: -5,
      most: 1000000,
      note: "From a maker's data; a tee with uneven split can have a K below 0.",
    }),
    above_water: input(length, "End of pipe above the water there", {
      default: 0,
      least: 0,
      most: 10,
      note: "0 where the pipe ends under water: it then discharges against the pool's level.",
    }),
    height_measured: input(head, "Height above the basin's design water level, as measured", {
      optional: true,
      least: 0,
      most: 500,
      note: "Blank: the drops and falls below the step, down to the rim, and the rim above the water.",
    }),
    flow_chosen: input(flow, "Flow, if chosen", {
      optional: true,
      least: 0,
      most: 2000,
      note: "Blank: an even part of what the step lacks.",
    }),
    angle_chosen: input(angle, "Valve turned from open, if chosen", {
      optional: true,
      least: 0,
      most: 90,
      note: "Blank: turned so that the flow is as wanted.",
    }),
    open_part: calc(count, "IF(ISBLANK(flow_chosen),1,0)", "Takes a part"),
    flow_fixed: calc(flow, "IF(ISBLANK(flow_chosen),0,flow_chosen)", "Flow chosen"),
    flow_wanted: calc(
      flow,
      "flow_fixed+open_part*IFERROR(INDEX(steps.to_bring,enters)/INDEX(steps.open_outlets,enters),0)",
      "Flow wanted",
      { strong: true },
    ),
    height: calc(
      head,
      "IF(ISBLANK(height_measured),IFERROR(INDEX(steps.level,enters),0)+above_water,height_measured)",
      "Height above the basin's design water level",
    ),
    bore: calc(bore, sizeAt("bore"), "Bore"),
    factor: calc(precise, sizeAt("turbulent_factor"), "Friction factor fT", { decimals: 3 }),
    loss_tee: calc(
      number,
      "factor*IFERROR(INDEX(tees.multiple,MATCH(tee,tees.name,0)),60)",
      "K: tee",
    ),
    tee_pieces: calc(count, "IFERROR(INDEX(tees.pieces,MATCH(tee,tees.name,0)),1)", "Tees"),
    loss_reducer: calc(number, "REDUCER(main_bore,bore)", "K: step from the main's bore"),
    loss_elbows: calc(number, "factor*(elbows_90*elbow_90+elbows_45*elbow_45)", "K: elbows"),
    loss_open: calc(
      number,
      "MAX(0,loss_tee+loss_reducer+loss_elbows+factor*ball_valve+exit_loss+extra_loss)",
      "K, valve open, with exit",
    ),
    friction: calc(
      precise,
      "FRICTION_COEFFICIENT(length,bore,smoothness)",
      "Friction, ft for each (gal/min)^1.852",
      { decimals: 7 },
    ),
    local_open: calc(
      precise,
      "LOCAL_COEFFICIENT(loss_open,bore)",
      "Fittings, ft for each (gal/min)²",
      { decimals: 7 },
    ),
    speed: calc(speed, "PIPE_SPEED(flow_wanted,bore)", "Speed at the flow wanted"),
    loss_wanted: calc(head, "LOSS_AT(flow_wanted,friction,local_open)", "Lost at the flow wanted"),
    head_needed: calc(head, "height+loss_wanted", "Head needed at the manifold", { strong: true }),
    head_to_burn: calc(head, "MAX(0,manifold_available-head_needed)", "Head for the valve to burn"),
    loss_to_add: calc(
      number,
      "IF(flow_wanted>0,head_to_burn/LOSS_AT(flow_wanted,0,LOCAL_COEFFICIENT(1,bore)),0)",
      "K for the valve to add",
    ),
    valve_row: calc(
      count,
      "MIN(COUNT(valve_opening.turned)-1,SUMPRODUCT((valve_opening.added<=loss_to_add)*1))",
      "Row of the valve table",
    ),
    angle_calculated: calc(
      angle,
      `MIN(90[°],IF(valve_row=1,${row("turned", "2")}*loss_to_add/${row("added", "2")},${row("turned", "valve_row")}+(${row("turned", "valve_row+1")}-${row("turned", "valve_row")})*LN(loss_to_add/${row("added", "valve_row")})/LN(${row("added", "valve_row+1")}/${row("added", "valve_row")})))`,
      "Turn from open, calculated",
      { decimals: 1 },
    ),
    angle_set: calc(
      angle,
      "IF(ISBLANK(angle_chosen),angle_calculated,MAX(0[°],MIN(90[°],angle_chosen)))",
      "Turn from open, as set",
      { strong: true },
    ),
    set_row: calc(
      count,
      "MIN(COUNT(valve_opening.turned)-1,SUMPRODUCT((valve_opening.turned<=angle_set)*1))",
      "Row of the valve table, as set",
    ),
    loss_valve: calc(
      number,
      `IF(set_row=1,${row("added", "2")}*angle_set/${row("turned", "2")},${row("added", "set_row")}*(${row("added", "set_row+1")}/${row("added", "set_row")})^((angle_set-${row("turned", "set_row")})/(${row("turned", "set_row+1")}-${row("turned", "set_row")})))`,
      "K that the valve adds, as set",
    ),
    local_set: calc(
      precise,
      "LOCAL_COEFFICIENT(loss_open+loss_valve,bore)",
      "Fittings as set, ft for each (gal/min)²",
      { decimals: 7 },
    ),
    closed: calc(percent, "angle_set/90[°]", "Closed"),
    valve_words: calc(
      text,
      `IF(angle_set<2[°],"leave fully open","turn "&FIXED(angle_set,0)&"° from open ("&CHOOSE(ROUND(closed*8,0)+1,${eighths})&")")`,
      "Valve, for the crew",
    ),
    flow_as_set: calc(flow, (at) => `INDEX(set_branches.flow,${at})`, "Flow as set", {
      strong: true,
    }),
    water_in_pipe: calc(waterVolume, "WATER_IN_PIPE(length,bore)", "Water in the branch", {
      decimals: 1,
    }),
    name_alone: check(
      "SUMPRODUCT((outlets.name=name)*(outlets.bore>0))<2",
      "{name} stands in more than one row of this table: give each row a name of its own, since the crew goes by it.",
      { label: "Name of its own" },
    ),
    step_exists: check(
      "COUNTIF(falls.step,enters)>0",
      "{name} enters at step {enters|0}, where there is no fall: choose a step that has one.",
      { label: "Step exists" },
    ),
    size_known: check(
      "ISNUMBER(MATCH(pipe_size,pipe_sizes.size,0))",
      "{name} has the pipe size {pipe_size}, which is not in the table of pipes: choose one that is. Its figures stand for the smallest pipe.",
      { label: "Pipe size known" },
    ),
    not_too_fast: check(
      "speed<=branch_speed_limit",
      "{name}: water would run at {speed} in the branch, the limit is {branch_speed_limit}: go up a pipe size.",
      { label: "Not too fast" },
    ),
    runs: check(
      "OR(flow_wanted<=0,flow_as_set>0)",
      "{name} stays dry: it stands {height} above the basin, but the manifold only reaches {manifold_head_set}: take a stronger pump, more speed, or lower it.",
      { label: "Runs" },
    ),
    flow_close: check(
      "AND(flow_as_set>=0.9*flow_wanted,flow_as_set<=1.1*flow_wanted)",
      "{name} runs {flow_as_set} where {flow_wanted} was wanted, more than 10 % off: change the pump, its speed or the valves.",
      { label: "Flow as wanted", level: "look" },
    ),
    valve_in_table: check(
      "angle_set<=65[°]",
      "{name}: its valve must be turned {angle_set}, beyond the published table: a smaller branch pipe would throttle better.",
      { label: "Valve within its table", level: "look" },
    ),
  },
);
