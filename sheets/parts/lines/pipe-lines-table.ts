import {
  angle,
  bore,
  calc,
  check,
  count,
  decide,
  flow,
  head,
  length,
  number,
  precise,
  speed,
  type TableBlock,
  table,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { plus } from "../added.js";
import { capacity } from "../capacity.js";
import type { LineEnds } from "../line-ends.js";
import { nameUnique } from "../name-unique.js";
import { siphonResults } from "./siphon.js";

const sizeAt = (column: string) => `PICK(pipe_sizes.${column},pipe_sizes.size,pipe_size)`;
/** No water passes a valve that adds so much: a figure would say nothing, nor fit its column. */
const asShut = { from: 1000000, says: "shut" } as const;
/** What the walk asks of a line; the rest of it is decided. */
const onWalk = "Pipe lines";

/**
 * One row for each line: where it delivers, its pipe, its valve. It is calculated once its row has its size, its end
 * and its fitting at the manifold. `fitted` are the loss coefficients of what parts fit into a line.
 */
export const pipeLinesTable = (ends: LineEnds, fitted: readonly string[] = []): TableBlock =>
  table(
    "pipe_lines",
    "Lines, manifold to outlet",
    {
      rows: capacity.lines,
      opening: 1,
      filled: `AND(LEN(pipe_size)>0,${ends.told},LEN(tee)>0)`,
      note: ends.note,
      ...(ends.beside !== undefined && { beside: ends.beside }),
    },
    {
      ...ends.first,
      pipe_size: decide(text, "Pipe size", { again: true, choices: "pipe_sizes.size" }),
      length: walk(length, "Length", { section: onWalk, again: true, default: 10, least: 0, most: 1000 }),
      tee: decide(text, "Manifold fitting", { default: "square tee", choices: "tees.name" }),
      elbows_90: decide(count, "90° elbows", { default: 2, least: 0, most: 50, whole: true }),
      elbows_45: decide(count, "45° elbows", { default: 0, least: 0, most: 50, whole: true }),
      called: calc(text, 'IF(LEFT(name&" ",5)="Line ",name,"Line "&name)', "Line, as called", { working: true }),
      other_fitting_loss: decide(number, "Other fitting loss, K", {
        default: 0,
        least: -5,
        most: 1000000,
        note: "From manufacturer's data; a tee with uneven split can have a K below 0.",
      }),
      ...ends.inputs,
      override_valve_setting: decide(angle, "Override valve setting", {
        optional: true,
        least: 0,
        most: 90,
        note: "Turned from open. Blank: so that design flow runs.",
      }),
      ...ends.flowAndHeight,
      bore: calc(bore, sizeAt("bore"), "Bore"),
      factor: calc(precise, sizeAt("turbulent_factor"), "Friction factor fT", { decimals: 3 }),
      loss_tee: calc(number, "factor*PICK(tees.multiple,tees.name,tee)", "K: tee"),
      tee_pieces: calc(count, "PICK(tees.pieces,tees.name,tee)", "Tees"),
      loss_reducer: calc(number, "REDUCER(main_bore,bore)", "K: reducer from main"),
      loss_elbows: calc(number, "factor*(elbows_90*elbow_90+elbows_45*elbow_45)", "K: elbows"),
      loss_check: calc(number, 'factor*IF(siphon_stop="check valve",swing_check,0)', "K: check valve"),
      loss_open: calc(
        number,
        `MAX(0,loss_tee+loss_reducer+loss_elbows+loss_check+factor*ball_valve+exit_loss+other_fitting_loss${plus(fitted)})`,
        "K, valve open, with exit",
      ),
      friction: calc(precise, "FRICTION_COEFFICIENT(length,bore,smoothness)", "Friction coefficient", { decimals: 7 }),
      local_open: calc(precise, "LOCAL_COEFFICIENT(loss_open,bore)", "Fittings coefficient", {
        decimals: 7,
      }),
      speed: calc(speed, "PIPE_SPEED(design_flow,bore)", "Speed at design flow"),
      design_loss: calc(head, "LOSS_AT(design_flow,friction,local_open)", "Loss at design flow"),
      head_required: calc(head, "IF(design_flow>0,height+design_loss,0)", "Head required at manifold", {
        strong: true,
      }),
      excess_head: calc(head, "IF(design_flow>0,MAX(0,manifold_available-head_required),0)", "Excess head at valve"),
      valve_loss_required: calc(
        number,
        "IF(design_flow>0,excess_head/LOSS_AT(design_flow,0,LOCAL_COEFFICIENT(1,bore)),0)",
        "Valve loss required, K",
      ),
      valve_row: calc(
        count,
        "MIN(SUMPRODUCT((valve_opening.turned>=0)*1)-1,SUMPRODUCT((valve_opening.added<=valve_loss_required)*1))",
        "Valve table row",
      ),
      calculated_valve_setting: calc(
        angle,
        "MIN(90[°],VALVE_SETTING(valve_loss_required,valve_row,valve_opening.turned,valve_opening.added))",
        "Calculated valve setting",
        { decimals: 1 },
      ),
      valve_setting: calc(
        angle,
        "IF(ISBLANK(override_valve_setting),IF(design_flow>0,calculated_valve_setting,90[°]),MAX(0[°],MIN(90[°],override_valve_setting)))",
        "Valve setting",
        { strong: true, note: "Turned from open. A line without design flow is shut." },
      ),
      shut: calc(yesno, "IF(ISBLANK(override_valve_setting),design_flow<=0,override_valve_setting>=90[°])", "Shut"),
      open_line: calc(count, "IF(shut,0,1)", "Open"),
      height_open: calc(head, "IF(shut,0,height)", "Height, if open"),
      valve_setting_row: calc(
        count,
        "MIN(SUMPRODUCT((valve_opening.turned>=0)*1)-1,SUMPRODUCT((valve_opening.turned<=valve_setting)*1))",
        "Valve table row, setting",
      ),
      valve_loss: calc(
        number,
        "VALVE_LOSS(valve_setting,valve_setting_row,valve_opening.turned,valve_opening.added)",
        "Valve loss, K",
        { beyond: asShut },
      ),
      local_actual: calc(precise, "LOCAL_COEFFICIENT(loss_open+valve_loss,bore)", "Fittings coefficient, actual", {
        decimals: 7,
        beyond: asShut,
      }),
      valve_words: calc(
        text,
        'IF(shut,"closed",IF(valve_setting<2[°],"leave fully open","turn "&FIXED(valve_setting,0)&"° from open"))',
        "Valve setting for crew",
      ),
      actual_flow: calc(flow, (at) => `INDEX(actual_lines.flow,${at})`, "Actual flow", {
        strong: true,
      }),
      speed_running: calc(speed, "PIPE_SPEED(MAX(design_flow,actual_flow),bore)", "Speed, larger flow"),
      water_in_pipe: calc(waterVolume, "IF(shut,0,WATER_IN_PIPE(length,bore))", "Water in line", {
        decimals: 1,
      }),
      ...siphonResults(ends),
      name_unique: nameUnique("pipe_lines", "pipe_lines.bore>0"),
      ...ends.endChecks,
      size_known: check(
        "LISTED(pipe_sizes.size,pipe_size)",
        "{name} has the pipe size {pipe_size}, which is not in the table of pipes. Choose one from the list on sheet Decisions.",
        { label: "Pipe size unknown" },
      ),
      height_agrees: check(
        "OR(NOT(is_measured),ABS(height-calculated_height)<=height_tolerance)",
        `{name} was measured {height} over basin water, but ${ends.heightSums}. Correct the rod, or measured_height on sheet Decisions.`,
        { label: "Height contradicts the drops" },
      ),
      ...ends.siphonChecks,
      not_too_fast: check(
        "speed_running<=line_speed_limit",
        "{name}: water runs at {speed_running}, over the limit of {line_speed_limit}: go up a pipe size on sheet Decisions.",
        { label: "Speed over limit" },
      ),
      ...ends.flowChecks,
      has_flow: check(
        "OR(design_flow<=0,actual_flow>0)",
        "{name} stays dry: it stands {height} over basin water, and the manifold has {manifold_head}. Choose a stronger pump on sheet Decisions, or lower the outlet.",
        { label: "Line dry" },
      ),
      flow_close: check(
        "AND(actual_flow>=0.9*design_flow,actual_flow<=1.1*design_flow)",
        "{name}: {actual_flow} is more than 10 % off its design flow of {design_flow}. Change the pump, its speed or the valve setting.",
        { label: "Flow off design", level: "look" },
      ),
      valve_in_table: check(
        "OR(shut,valve_setting<=65[°])",
        "{name}: its valve setting of {valve_setting} is beyond the published table. Choose a smaller pipe size on sheet Decisions.",
        { label: "Valve nearly closed", level: "look" },
      ),
    },
  );
