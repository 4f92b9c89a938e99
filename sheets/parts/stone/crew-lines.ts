import type { CrewSection } from "../../plan/crew-page.js";
import { bullet, bulletEachRow, line, type PlacedLine } from "../../plan/page-line.js";
import { stonePlaceTable } from "./places.js";
import { stoneSaid } from "./stone-said.js";

export const crewOfStone: readonly PlacedLine<CrewSection>[] = [
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
  ...bulletEachRow(
    "step: stone",
    stonePlaceTable,
    '{name}: {tons|1} of {stone}{IF(ROUND(heaviest/1[‹lb|kg›],0)>=1,", largest about "&said,"")}; {work}.',
    { when: "tons>0", beside: [stoneSaid] },
  ),
  line(
    "stop: lifting",
    "STOP. Do not move {heaviest_stone|0} by hand: {crew_size|0} people move {hand_moved|0|down} on rollers and bars. Bring smaller stone or more people.",
    "NOT(crew_moves_stone)",
  ),
  bullet(
    "step: stone",
    "By hand: carry together up to {hand_lift|0|down}, pry and roll up to {hand_moved|0|down} on planks, rollers and bars. Nobody below a stone on a slope; no fingers under it.",
    "AND(by_hand,heaviest_stone>0,crew_moves_stone)",
  ),
  bullet(
    "step: stone",
    "Heaviest lift {load_on_hook|0} at {working_radius|up}: the chart of {machine_name} allows {machine_lift|0}. Nobody under the load.",
    "AND(heaviest_stone>0,NOT(by_hand),chart_copied,machine_lifts)",
  ),
  bullet(
    "step: stone",
    "Heaviest lift {load_on_hook|0} at {working_radius|up}, rigging counted. Nobody under the load.",
    "AND(heaviest_stone>0,NOT(by_hand),NOT(AND(chart_copied,machine_lifts)))",
  ),
];
