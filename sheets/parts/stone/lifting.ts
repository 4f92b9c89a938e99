import {
  calc,
  check,
  count,
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
import { capacity } from "../capacity.js";
import { practice } from "../rates.js";

/** The heaviest stone against what the machine may lift where it must be set. */
export const stoneLifting = lines("Heaviest stone and machine", {
  heaviest_stone: calc(weight, "MAX(stone_places.heaviest)", "Heaviest single stone", { strong: true }),
  rigging_weight: office(weight, "Chains, slings, grab", { default: 50, least: 0, most: 5000 }),
  density_doubt: office(percent, "Allowance for stone weight", {
    default: 0.25,
    least: 0,
    most: 1,
    decimals: 0,
    note: "For sizes judged by eye, wet stone, and rock denser than its list says; the shape stands with the stone class.",
    source: "common practice, no source",
  }),
  load_on_hook: calc(weight, "heaviest_stone*(1+density_doubt)+rigging_weight", "Load on the hook"),
  working_radius: walk(length, "Working radius", {
    section: "Stone drop",
    default: 10,
    least: 1,
    most: 60,
    note: "From the machine's center of swing to the stone's place.",
  }),
  chart_radius: calc(
    length,
    "LEAST_WHERE(machine_chart.counted_radius,machine_chart.far_enough,1)",
    "Chart radius used",
    { note: "The next radius of the chart that is not shorter.", zero: "none" },
  ),
  machine_lift: calc(
    weight,
    "IF(chart_radius>0,PICK(machine_chart.lift,machine_chart.counted_radius,chart_radius),0)",
    "Chart lift at that radius",
    {
      strong: true,
      zero: "none",
      note: "No reading between the lines of a chart: the longer reach counts.",
    },
  ),
  lift_in_chart: calc(text, "~{machine_lift|0|down}", "Lift by the chart"),
  lift_said: calc(text, 'IF(machine_lift > 0, lift_in_chart, "nothing at that reach")', "Chart lift, in words"),
  chart_copied: office(yesno, "Chart copied from own machine", {
    default: false,
  }),
  chart_machine: office(text, "Machine of the chart", { optional: true }),
  chart_confirmed: check(
    "OR(by_hand,AND(chart_copied,LEN(chart_machine)>0))",
    "The lifting chart is the example's. Copy the chart in the machine's cab, enter chart_machine, and set chart_copied to yes on sheet Office rules.",
    { label: "Lifting chart is the example's", level: "look" },
  ),
  machine_lifts: check(
    "OR(by_hand,load_on_hook<=machine_lift)",
    "The load on the hook is {load_on_hook} at {working_radius}, but the chart shows {lift_said}. Enter a larger machine_chart on sheet Office rules, or smaller stones.",
    { label: "Stone too heavy for machine" },
  ),
  hand_lift: calc(weight, "crew_size*lift_limit", "Stone that the crew carries", {
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
  pots_moved: check(
    "IF(by_hand,heaviest_pot<=hand_moved,heaviest_pot+rigging_weight<=machine_lift)",
    "The heaviest pot weighs {heaviest_pot} empty; the crew moves {hand_moved} by hand, the machine lifts {lift_said}. Choose a lighter pot in pots on sheet Walk.",
    { label: "Pot too heavy to set" },
  ),
  crew_moves_stone: check(
    "OR(NOT(by_hand),heaviest_stone<=hand_moved)",
    "By hand {crew_size|0} people move {hand_moved} on rollers and bars; the heaviest stone weighs {heaviest_stone}. Enter smaller stone in stones on sheet Decisions.",
    { label: "Stone too heavy by hand" },
  ),
});

export const liftingChart = table(
  "machine_chart",
  "Lifting chart, over the side",
  {
    rows: capacity.liftingPoints,
    filled: "radius>0",
    data: [
      { radius: 8, lift: 2400 },
      { radius: 10, lift: 1900 },
      { radius: 12, lift: 1500 },
      { radius: 14, lift: 1200 },
    ],
    note: "Placeholders of a small excavator, common practice, no source: copy the chart that is fixed in the machine's own cab, for the side lift and with its attachment.",
  },
  {
    radius: office(length, "Radius", { least: 0.1, most: 100, decimals: 1 }),
    lift: office(weight, "Lift allowed", { default: 0, least: 0, most: 100000 }),
    rises: check(
      "SUMPRODUCT((machine_chart.radius>0)*(machine_chart.radius<radius)*(machine_chart.lift<lift))=0",
      "The chart allows {lift} at {radius}, more than at a shorter radius. Copy the chart again, in machine_chart on sheet Office rules.",
      { label: "Lift grows with radius" },
    ),
    counted_radius: calc(length, "radius", "Radius, counted", { decimals: 1 }),
    far_enough: calc(count, "IF(radius>=working_radius,1,0)", "Radius far enough"),
  },
);
