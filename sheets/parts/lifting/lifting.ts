import {
  book,
  type CellDeclaration,
  calc,
  check,
  count,
  decide,
  length,
  lines,
  office,
  percent,
  table,
  text,
  walk,
  weight,
  yesno,
} from "../../../engine/template/index.js";
import type { Whole } from "../brought.js";
import { capacity } from "../capacity.js";
import { numberedRows, rowNumber } from "../numbered.js";
import { practice } from "../rates.js";

const points = Array.from({ length: capacity.liftingPoints }, (_, i) => i + 1);

const columns = (name: string, make: (point: number) => CellDeclaration) =>
  Object.fromEntries(points.map((point) => [`${name}_${point}`, make(point)]));

const ofMachine = (column: string) => `INDEX(machines.${column},MAX(machine_row,1))`;

/** The heaviest stone against what the machine may lift where it must be set. */
const largest = (weights: readonly string[]) =>
  (weights.length === 1 ? weights[0] : `MAX(${weights.join(",")})`) ?? "0[lb]";

export const stoneLifting = ({ heavy, cellsAt }: Pick<Whole, "heavy" | "cellsAt">) => {
  const lighter = heavy[0]?.lighter ?? "a lighter one";
  return lines("Heaviest stone and machine", {
    heaviest_stone: calc(weight, largest(heavy.map((one) => one.weight)), "Heaviest single stone", { strong: true }),
    ...cellsAt("lifting"),
    rigging_weight: office(weight, "Chains, slings, grab", { default: 50, least: 0, most: 5000 }),
    density_doubt: office(percent, "Allowance for stone weight", {
      default: 0.25,
      least: 0,
      most: 1,
      decimals: 0,
      note: "For sizes judged by eye, wet stone, and rock denser than its list says; the shape stands with the stone class.",
      source: "common practice, no source",
    }),
    load_on_hook: calc(weight, "heaviest_stone*(1+density_doubt)+rigging_weight", "Load on the hook", {
      working: true,
    }),
    working_radius: walk(length, "Working radius", {
      section: "Stone drop",
      default: 10,
      least: 1,
      most: 60,
      note: "From the machine's center of swing to the stone's place.",
    }),
    machine_choice: decide(text, "Machine", {
      section: "Stone",
      optional: true,
      choices: "machines.code",
      note: "Of sheet Machines of the office book. Blank: its first for the method of work.",
    }),
    machine_row: calc(
      count,
      "IF(ISBLANK(machine_choice),PLACE_OR_ZERO(machines.method,work_method),PLACE_OR_ZERO(machines.code,machine_choice))",
      "Row of the machine",
      { working: true, zero: "none" },
    ),
    machine_name: calc(text, `IF(machine_row>0,${ofMachine("description")},"the machine")`, "Machine in words"),
    chart_copied: calc(
      yesno,
      `IF(machine_row>0,IF(${ofMachine("chart_copied")},TRUE,FALSE),FALSE)`,
      "Chart from its cab",
    ),
    machine_fits: check(
      `OR(by_hand,machine_row=0,INDEX(machines.method,MAX(machine_row,1))=work_method)`,
      "{machine_name} is no machine for the method {work_method}. Choose another machine_choice, or method_choice, on sheet Decisions.",
      { label: "Machine of another method", level: "look" },
    ),
    chart_radius: calc(length, "LEAST_WHERE(machine_chart.radius,machine_chart.far_enough,1)", "Chart radius used", {
      working: true,
      note: "The next radius of the chart that is not shorter.",
      zero: "none",
    }),
    machine_lift: calc(
      weight,
      "IF(chart_radius>0,PICK(machine_chart.lift,machine_chart.radius,chart_radius),0)",
      "Chart lift at that radius",
      {
        strong: true,
        zero: "none",
        note: "No reading between the lines of a chart: the longer reach counts.",
      },
    ),
    lift_in_chart: calc(text, "~{machine_lift|0|down}", "Lift by the chart", { working: true }),
    lift_said: calc(text, 'IF(machine_lift > 0, lift_in_chart, "nothing at that reach")', "Chart lift, in words", {
      working: true,
    }),
    machine_lifts: check(
      "OR(by_hand,load_on_hook<=machine_lift)",
      `{heaviest_said}: {load_on_hook} on the hook at {working_radius}, but the chart shows {lift_said}. Choose another machine_choice, or ${lighter}, on sheet Decisions.`,
      { label: "Stone too heavy for machine" },
    ),
    hand_lift: calc(weight, "crew_size*lift_limit", "Stone that the crew carries", {
      working: true,
      note: "All of the crew at one stone, each with the limit of sheet Liner.",
      source: "NIOSH Publication 94-110 for each person; sharing a load out evenly is an assumption",
    }),
    roller_limit: office(weight, "Stone on rollers, per person", {
      default: 200,
      least: 0,
      most: 1000,
      note: "With bars, planks and rollers or a stone dolly: pried and rolled, never lifted.",
      source: practice,
    }),
    hand_moved: calc(weight, "MAX(hand_lift,crew_size*roller_limit)", "Stone that the crew moves", { strong: true }),
    ...cellsAt("lifting checks"),
    crew_moves_stone: check(
      "OR(NOT(by_hand),heaviest_stone<=hand_moved)",
      `{heaviest_said}: one weighs {heaviest_stone}, but {crew_size|0} people move {hand_moved} on rollers and bars. Choose ${lighter} on sheet Decisions.`,
      { label: "Stone too heavy by hand" },
    ),
  });
};

/** The machines of the office book, each with the chart in its cab. */
export const machinesTable = table(
  "machines",
  "Machines in the office book",
  { rows: capacity.machines, from: "machines", filled: "LEN(code)>0" },
  {
    code: book(text, "Code"),
    description: book(text, "Machine"),
    method: book(text, "Method"),
    chart_copied: book(yesno, "Chart from its cab"),
    source: book(text, "Source"),
    placeholder: book(yesno, "Placeholder"),
    ...columns("radius", (k) => book(length, `Radius ${k}`, { decimals: 1 })),
    ...columns("lift", (k) => book(weight, `Lift ${k}`)),
  },
);

const at = (name: string) => (row: number) => `IF(machine_row>0,INDEX(machines.${name}_${row},MAX(machine_row,1))+0,0)`;

export const liftingChart = table(
  "machine_chart",
  "Lifting chart, over the side",
  {
    ...numberedRows(capacity.liftingPoints, "point"),
    note: "As the office book has it for the machine: the side lift, with its attachment.",
  },
  {
    point: rowNumber("Point"),
    radius: calc(length, at("radius"), "Radius", { decimals: 1, zero: "" }),
    lift: calc(weight, at("lift"), "Lift allowed", { zero: "" }),
    far_enough: calc(count, "IF(AND(radius>0,radius>=working_radius),1,0)", "Radius far enough", { working: true }),
  },
);
