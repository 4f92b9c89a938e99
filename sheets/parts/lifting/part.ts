import { unprinted } from "../../../engine/template/index.js";
import type { CrewSection } from "../../plan/crew-page.js";
import { bullet, line, type PlacedLine } from "../../plan/page-line.js";
import { part } from "../part.js";
import { stoneCautions } from "./cautions.js";
import { liftingChart, machinesTable, stoneLifting } from "./lifting.js";

const crew: readonly PlacedLine<CrewSection>[] = [
  line(
    "stop: lifting",
    "STOP. Do not lift {load_on_hook|0} at {working_radius|up} yet: the lifting chart of {machine_name} was not copied from its cab. Ask for the chart of the machine itself.",
    "AND(heaviest_stone>0,NOT(by_hand),NOT(chart_copied))",
  ),
  line(
    "stop: lifting",
    "STOP. Do not lift: {load_on_hook|0} at {working_radius|up}, the chart of {machine_name} allows {lift_said}. Bring a larger machine or set from nearer.",
    "AND(chart_copied,NOT(machine_lifts))",
  ),
  line(
    "stop: lifting",
    "STOP. Do not move {heaviest_stone|0} by hand: {crew_size|0} people move {hand_moved|0|down} on rollers and bars. Bring smaller stone or more people.",
    "NOT(crew_moves_stone)",
  ),
  bullet(
    "caution: lifting",
    "By hand: carry together up to {hand_lift|0|down}, pry and roll up to {hand_moved|0|down} on planks, rollers and bars. Nobody below a stone on a slope; no fingers under it.",
    "AND(by_hand,heaviest_stone>0,crew_moves_stone)",
  ),
  bullet(
    "caution: lifting",
    "Heaviest lift {load_on_hook|0}, a stone of {heaviest_stone|0} with its rigging, at {working_radius|up}: the chart of {machine_name} allows {machine_lift|0}. Nobody under the load.",
    "AND(heaviest_stone>0,NOT(by_hand),chart_copied,machine_lifts)",
  ),
  bullet(
    "caution: lifting",
    "Heaviest lift {load_on_hook|0}, a stone of {heaviest_stone|0} with its rigging, at {working_radius|up}. Nobody under the load.",
    "AND(heaviest_stone>0,NOT(by_hand),NOT(AND(chart_copied,machine_lifts)))",
  ),
];

export const lifting = part(
  "Lifting",
  "The heaviest stone against the machine that lifts it, or the people who roll it.",
  {
    section: "Stone",
    blocks: { Stone: [stoneLifting] },
    below: { Stone: [stoneCautions, unprinted(liftingChart)], Prices: [machinesTable] },
    crew,
  },
);
