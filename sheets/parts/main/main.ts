import {
  type Block,
  bore,
  calc,
  check,
  count,
  decide,
  head,
  length,
  lines,
  number,
  office,
  percent,
  precise,
  speed,
  text,
  unprinted,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import { roughnessHeight, viscosity, waterVolume } from "../../vocabulary/quantities.js";
import { plus } from "../added.js";
import type { Whole } from "../brought.js";
import type { Made } from "../part.js";
import { sizeComparison } from "./size-comparison.js";

const sizeAt = (column: string) => `IF(ISBLANK(main_size),0,PICK(pipe_sizes.${column},pipe_sizes.size,main_size))`;
const fitting = { least: 0, most: 100, whole: true };

const pipe = lines("Main, pump to manifold", {
  main_size: decide(text, "Main pipe size", { again: true, default: "3 in", choices: "pipe_sizes.size" }),
  main_length: walk(length, "Main length", { again: true, default: 40, least: 0, most: 2000 }),
  flexible_length: office(length, "Flexible pipe at pump", {
    default: 6,
    least: 0,
    most: 100,
    note: "Of the main's size: it loses friction and drains back like as much more of the main.",
  }),
  main_elbows_90: decide(count, "90° elbows", { default: 3, ...fitting }),
  main_elbows_45: decide(count, "45° elbows", { default: 0, ...fitting }),
  main_tees: decide(count, "Tees, straight through", { default: 0, ...fitting }),
  main_valves: decide(count, "Ball valves, open", { default: 1, ...fitting }),
  inlet_fitting: office(text, "Inlet fitting", {
    default: "bulkhead fitting, flush",
    choices: "inlet_fittings.name",
  }),
  check_valve_fitted: decide(yesno, "Check valve in main", {
    default: false,
    note: "Keeps the main full at a stop. Lines that end higher than the lowest one drain through that one all the same.",
  }),
  main_other_fitting_loss: decide(number, "Other fitting loss, K", {
    default: 0,
    least: -5,
    most: 1000000,
  }),
});

const rules = lines("Pipe rules", {
  bore_basis: office(text, "Bore taken as", {
    default: "outside less two least walls",
    choices: ["outside less two least walls", "wall 3 % over the least", "average inside diameter"],
    note: "Pipe is made with walls thicker than the least: the other two lose up to 6 % more head.",
  }),
  smoothness: office(number, "Hazen-Williams C", {
    default: 150,
    least: 80,
    most: 160,
    decimals: 0,
    source: "plastic pipe 140 to 150: EPANET 2.2 User Manual, table of roughness",
  }),
  roughness_height: office(roughnessHeight, "Wall roughness", {
    default: 0.00006,
    least: 0,
    most: 0.1,
    source: "plastic 0.000005 ft: Hydraulic Institute Engineering Data Book",
  }),
  water_viscosity: office(viscosity, "Water viscosity", {
    default: 1.217,
    least: 0.6,
    most: 2,
    note: "From ‹2|1.86› near freezing to ‹0.6 at 120 °F|0.56 at 49 °C›: warmer water does not run over stone.",
    source: "water at 60 °F (from memory)",
    decimals: 3,
  }),
  head_reserve: office(percent, "Head reserve", {
    default: 0.1,
    least: 0,
    most: 0.5,
    decimals: 0,
    note: "At full speed the pump must give so much more than the TDH. A test of the pump only: flows, speed and valve settings are for the TDH itself.",
    source: "common practice, no source",
  }),
  main_speed_limit: office(speed, "Speed limit, main", {
    default: 5,
    least: 1,
    most: 15,
    source: "usual limit in the choice of plastic pipe: university course table for Class 160 pipe",
  }),
});

const results = ({ added, words }: Pick<Whole, "added" | "words">) =>
  lines("Main at design flow", {
    main_total_length: calc(length, "main_length+flexible_length", "Length with flexible pipe", { working: true }),
    main_bore: calc(bore, sizeAt("bore"), "Bore", { working: true }),
    main_factor: calc(precise, sizeAt("turbulent_factor"), "Friction factor fT", { working: true, decimals: 3 }),
    main_multiples: calc(
      number,
      "main_elbows_90*elbow_90+main_elbows_45*elbow_45+main_tees*tee_run+main_valves*ball_valve+IF(check_valve_fitted,swing_check,0)",
      "Fittings, multiples of fT",
      { working: true },
    ),
    main_fixed_loss: calc(
      number,
      "IF(ISBLANK(inlet_fitting),0,PICK(inlet_fittings.loss,inlet_fittings.name,inlet_fitting))+main_other_fitting_loss",
      "K independent of size",
      { working: true },
    ),
    main_loss_coefficient: calc(number, "MAX(0,main_fixed_loss+main_factor*main_multiples)", "Total K", {
      working: true,
    }),
    main_friction: calc(
      precise,
      "FRICTION_COEFFICIENT(main_total_length,main_bore,smoothness)",
      "Friction coefficient",
      { working: true, decimals: 7 },
    ),
    main_local: calc(
      precise,
      `LOCAL_COEFFICIENT(main_loss_coefficient,main_bore)${plus(added("main loss"))}`,
      "Fittings coefficient",
      { working: true, decimals: 7 },
    ),
    main_speed: calc(speed, "PIPE_SPEED(total_design_flow,main_bore)", "Speed", { strong: true }),
    main_speed_running: calc(speed, "PIPE_SPEED(MAX(total_design_flow,total_flow),main_bore)", "Speed, larger flow", {
      working: true,
    }),
    main_friction_loss: calc(
      head,
      "HAZEN_WILLIAMS(total_design_flow,main_total_length,main_bore,smoothness)",
      "Friction loss",
    ),
    main_fitting_loss: calc(head, "LOSS_AT(total_design_flow,0,main_local)", "Fitting loss"),
    main_loss: calc(head, "LOSS_AT(total_design_flow,main_friction,main_local)", "Main loss", {
      strong: true,
    }),
    total_dynamic_head: calc(head, "highest_head_required+main_loss", "Total dynamic head (TDH)", {
      strong: true,
    }),
    head_with_reserve: calc(head, "total_dynamic_head*(1+head_reserve)", "TDH with reserve"),
    main_reynolds: calc(number, "REYNOLDS(main_speed,main_bore,water_viscosity)", "Reynolds number", {
      working: true,
      decimals: 0,
    }),
    main_darcy_loss: calc(
      head,
      "IF(main_reynolds>0,DARCY_LOSS(SWAMEE_JAIN(main_reynolds,roughness_height,main_bore),main_total_length,main_bore,main_speed),0)",
      "Friction loss by Darcy-Weisbach",
      { working: true, note: "Cross-check of Hazen-Williams." },
    ),
    main_darcy_gap: calc(
      percent,
      "IF(main_friction_loss>0,main_darcy_loss/main_friction_loss-1,0)",
      "Darcy-Weisbach over Hazen-Williams",
    ),
    main_water: calc(waterVolume, "WATER_IN_PIPE(main_total_length,main_bore)", "Water in main", {
      working: true,
      decimals: 1,
    }),
    pipe_water: calc(waterVolume, "main_water+SUM(pipe_lines.water_in_pipe)", "Water in pipes", {
      working: true,
      decimals: 1,
    }),
    pipe_drained: calc(
      waterVolume,
      "IF(check_valve_fitted,0,main_water)+SUM(pipe_lines.line_drained)",
      "Drain-back from pipes",
      { working: true, decimals: 1 },
    ),
    siphoned: calc(
      waterVolume,
      [...added("siphoned"), "SUM(pipe_lines.pot_siphoned)"].join("+"),
      `Siphoned from ${words["pools and pots"]}`,
    ),
    siphons_counted: calc(yesno, "AND(pipe_lines.siphon_counted)", "All siphoned water counted", { working: true }),
    drain_back: calc(waterVolume, "pipe_drained+siphoned", "Drain-back when pump stops", { strong: true }),
    pot_water: calc(waterVolume, "SUM(pipe_lines.pot_water)", `Water in ${words.pots}`, { working: true, decimals: 1 }),
    manifold_tees: calc(count, "SUM(pipe_lines.tee_pieces)", "Manifold tees", { working: true }),
    manifold_caps: calc(
      count,
      'IF(AND(manifold_tees>0,NOT(LISTED(pipe_lines.tee,"end of the manifold"))),1,0)',
      "Manifold caps",
      { working: true, note: "None where a line leaves by the end." },
    ),
  });

const checks = lines("Main checks", {
  main_size_known: check(
    "LISTED(pipe_sizes.size,main_size)",
    "The main's size {main_size} is not in the table of pipes. Choose one from the list on sheet Decisions.",
    { label: "Main pipe size unknown" },
  ),
  main_not_too_fast: check(
    "main_speed_running<=main_speed_limit",
    "Water runs at {main_speed_running} in the main, over the limit of {main_speed_limit}: go up a main pipe size on sheet Decisions.",
    { label: "Main speed over limit" },
  ),
  main_has_length: check(
    "main_length>0",
    "The main has no length, so no friction is counted: enter its length along the trench on sheet Walk.",
    { label: "Main length missing" },
  ),
  main_friction_sure: check(
    "OR(main_friction_loss<0.1[ft],ABS(main_darcy_gap)<=0.1)",
    "Friction is {main_darcy_loss} by Darcy-Weisbach, {main_friction_loss} by Hazen-Williams, over 10 % apart. Check C and wall roughness on sheet Office rules.",
    { label: "Friction formulas disagree", level: "look" },
  ),
});

/** The main: its losses, and what another size would do. */
export const mainBlocks: readonly (Block | Made<Block>)[] = [pipe, rules, results, checks];

/** What an office looks up as it chooses a pipe, and prints for nobody. */
export const mainSizes: Made<Block> = (all) => unprinted(sizeComparison(all));

export const mainNotes = [
  "Friction is by Hazen-Williams with the constants of EPANET; the hand form with 10.44 and 4.8704 gives 0.2 % less. It holds for water near room temperature.",
  "Water hammer is not modeled: close valves slowly, and ask the maker of a check valve where it may slam.",
] as const;
