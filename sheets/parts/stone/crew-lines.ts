import type { CrewSection } from "../../plan/crew-page.js";
import { bullet, bulletEachRow, line, type PlacedLine } from "../../plan/page-line.js";
import { stoneClassTable } from "./classes.js";
import { stoneSaid } from "./stone-said.js";

export const crewOfStone: readonly PlacedLine<CrewSection>[] = [
  line(
    "stop: lifting",
    "STOP. Do not lift {load_on_hook|0} at {working_radius|up} yet: this bid holds an example's lifting chart. Ask for the chart of the machine itself.",
    "AND(heaviest_stone>0,NOT(chart_confirmed))",
  ),
  line(
    "stop: lifting",
    "STOP. Do not lift: {load_on_hook|0} at {working_radius|up}, the chart of {chart_machine} allows {lift_said}. Bring a larger machine or set from nearer.",
    "AND(chart_confirmed,NOT(machine_lifts))",
  ),
  ...bulletEachRow(
    "stone",
    stoneClassTable,
    '{name}: {tons|1}{IF(ROUND(heaviest/1[‹lb|kg›],0)>=1,", largest about "&said,"")}.',
    { when: "tons>0", beside: [stoneSaid] },
  ),
  bullet(
    "stone",
    "Heaviest lift {load_on_hook|0} at {working_radius|up}: the chart of {chart_machine} allows {machine_lift|0}. Nobody under the load.",
    "AND(heaviest_stone>0,chart_confirmed,machine_lifts)",
  ),
  bullet(
    "stone",
    "Heaviest lift {load_on_hook|0} at {working_radius|up}, rigging counted. Nobody under the load.",
    "AND(heaviest_stone>0,NOT(AND(chart_confirmed,machine_lifts)))",
  ),
];
