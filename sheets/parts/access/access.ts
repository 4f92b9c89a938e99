import {
  calc,
  check,
  count,
  decide,
  length,
  lines,
  number,
  office,
  percent,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import { methods } from "../../tables/work-methods.js";
import { rate } from "../../vocabulary/rate.js";
import { practice } from "../rates.js";

/** The way in decides how the work is done; the estimator may overrule it. */
export const accessMethod = lines("Access and method", {
  gate_width: walk(length, "Narrowest gate or passage", {
    default: 12,
    least: 1,
    most: 100,
    note: "On the way from the truck to the work.",
  }),
  access_steps: walk(count, "Steps on the way in", { default: 0, least: 0, most: 60, whole: true }),
  access_slope: walk(percent, "Steepest slope of access", { default: 0.05, least: 0, most: 1, decimals: 0 }),
  stone_drop: walk(text, "Stone drop, where", {
    section: "Stone drop",
    optional: true,
    note: "Where the trucks can tip: the crew reads it.",
  }),
  site_haul: walk(length, "Haul distance on site", { section: "Stone drop", default: 50, least: 0, most: 1000 }),
  machine_gate: office(length, "Gate for the machine", { default: 7, least: 1, most: 20, source: practice }),
  small_machine_gate: office(length, "Gate for the small machine", {
    default: 3.5,
    least: 1,
    most: 20,
    source: practice,
  }),
  machine_slope: office(percent, "Steepest slope for machines", {
    default: 0.25,
    least: 0,
    most: 1,
    decimals: 0,
    source: `${practice}; the machine's manual decides`,
  }),
  method_by_access: calc(
    text,
    'IF(OR(access_steps>0,access_slope>machine_slope,gate_width<small_machine_gate),"by hand",IF(gate_width<machine_gate,"small machine","machine"))',
    "Method that access allows",
    { working: true },
  ),
  method_choice: decide(text, "Override method", { section: "Labor", optional: true, choices: methods }),
  work_method: calc(text, "IF(LEN(method_choice)>0,method_choice,method_by_access)", "Method of work", {
    strong: true,
  }),
  by_hand: calc(yesno, 'work_method="by hand"', "Work by hand", { working: true }),
  method_fits: check(
    'OR(by_hand,method_by_access="machine",work_method=method_by_access)',
    "{work_method} is chosen, but gate {gate_width}, {access_steps|0} steps and slope {access_slope} allow {method_by_access}. Widen or ramp the way, or clear method_choice.",
    { label: "Machine does not fit access", level: "look" },
  ),
  access_factor: calc(number, `IF(work_method="small machine",${rate("small-machine")},1)`, "Access time factor"),
  barrow_factor: calc(
    number,
    `BARROW(by_hand,access_slope,access_steps,${rate("barrow-slope")},${rate("barrow-step")})`,
    "Slope and steps factor",
    { working: true },
  ),
  haul_factor: calc(
    number,
    'barrow_factor*(1+PICK(used_rates.value,used_rates.code,IF(by_hand,"haul-by-hand","haul-by-machine"))/100*site_haul/100[ft])',
    "Haul time factor",
  ),
});

export const access = lines("Ground mats for access", {
  access_length: walk(length, "Lawn and roots to cover", {
    default: 60,
    least: 0,
    most: 2000,
  }),
  mat_length: office(length, "Length of a ground mat", { default: 8, least: 1, most: 30 }),
  mat_rows: office(count, "Mats side by side", { default: 2, least: 0, most: 6, whole: true }),
  ground_mats: calc(count, "IF(by_hand,0,mat_rows*WHOLE_UP(access_length/MAX(0.1[ft],mat_length)))", "Ground mats", {
    strong: true,
  }),
});
