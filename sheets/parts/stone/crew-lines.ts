import type { CrewSection } from "../../plan/crew-page.js";
import { bullet, bulletEachRow, line, type PlacedLine, under } from "../../plan/page-line.js";
import { stonePlaces, stoneWork } from "../../tables/stone.js";
import { stonePlaceTable } from "./places.js";
import { stoneSaid } from "./stone-said.js";

/** The task that lays the stone of a place, as the places are to start from; further places stand with the boulders. */
function taskOf(place: (typeof stonePlaces)[number] | undefined): string {
  if (place?.covers === "back walls") return "Build back walls of the falls";
  if (place?.work === stoneWork.lips) return "Choose and set the lips";
  if (place?.work === stoneWork.faces) return "Build the faces of the falls";
  if (place?.work === stoneWork.laid) return "Lay cobble of banks and beds";
  if (place?.work === stoneWork.raked) return "Dump and rake gravel, fill the basin's stone";
  // the later of two boxes, of which one may be hidden
  return "Roll boulders into place by hand";
}

/** What lies in a place; how it is set is said where it is not as its task says. */
const stoneOf = (row: number) =>
  `{CAPITALIZED(name)}: {placed} of {stone}{IF(ROUND(heaviest/1[‹lb|kg›],0)>=1,", largest "&said,"")}{IF(work="${stonePlaces[row]?.work ?? ""}","","; "&work)}{IF(bed_holds_stone,"","; dig it in, no higher than the banks")}.`;

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
  ...Array.from({ length: stonePlaceTable.rows }, (_, row) => row).flatMap((row) =>
    bulletEachRow("step: stone", stonePlaceTable, stoneOf(row), { when: "tons>0", beside: [stoneSaid] })
      .slice(row, row + 1)
      .map((said) => ({ ...said, under: taskOf(stonePlaces[row]) })),
  ),
  ...under(
    "Choose and set the lips",
    bullet("step: falls", "Lip stones: {lip_thickness|0|up} thick.", "lip_thickness>0"),
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
