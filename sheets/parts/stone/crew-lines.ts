import { type CrewSection, step } from "../../plan/crew-page.js";
import { bullet, bulletEachRow, type PlacedLine, under } from "../../plan/page-line.js";
import { stonePlaces, stoneWork } from "../../tables/stone.js";
import { stonePlaceTable } from "./places.js";
import { stoneSaid } from "./stone-said.js";

/** Its hours are the gravel's; it is done before the basin is filled, so that crates and vault neither float nor shift. */
const crateFill = "Fill stone around the crates";
const cratesFilled = 'SUM_WHERE(stone_places.tons,stone_places.covers,"basin fill")>0';

/** The task that lays the stone of a place, as the places are to start from; further places stand with the boulders. */
function taskOf(place: (typeof stonePlaces)[number] | undefined): string {
  if (place?.covers === "back walls") return "Build back walls of the falls";
  if (place?.work === stoneWork.lips) return "Choose and set the lips";
  if (place?.work === stoneWork.faces) return "Build the faces of the falls";
  if (place?.work === stoneWork.laid) return "Lay cobble of banks and beds";
  if (place?.covers === "basin fill") return crateFill;
  if (place?.work === stoneWork.raked) return "Dump and rake gravel, fill the basin's stone";
  // the later of two boxes, of which one may be hidden
  return "Roll boulders into place by hand";
}

/** What lies in a place; how it is set is said where it is not as its task says. */
const stoneOf = (row: number) =>
  `{CAPITALIZED(name)}: {placed} of {stone}{IF(ROUND(heaviest/1[‹lb|kg›],0)>=1,", largest "&said,"")}{IF(work="${stonePlaces[row]?.work ?? ""}","","; "&work)}{IF(bed_holds_stone,"","; dig it in, no higher than the banks")}.`;

export const crewOfStone: readonly PlacedLine<CrewSection>[] = [
  {
    ...step("do: stones", `${crateFill} (hours: gravel)`, cratesFilled),
    task: crateFill,
  },
  ...under(
    crateFill,
    bullet(
      "step: stones",
      "Once main and lines have held water, before the basin is filled for the test run: up to the rim.",
      cratesFilled,
    ),
  ),
  ...Array.from({ length: stonePlaceTable.rows }, (_, row) => row).flatMap((row) =>
    bulletEachRow("step: stone", stonePlaceTable, stoneOf(row), { when: "tons>0", beside: [stoneSaid] })
      .slice(row, row + 1)
      .map((said) => ({ ...said, under: taskOf(stonePlaces[row]) })),
  ),
  ...under(
    "Dump and rake gravel, fill the basin's stone",
    bullet("step: stone", "Its hours hold the stone around the crates, filled before the test run.", cratesFilled),
  ),
  ...under(
    "Choose and set the lips",
    bullet("step: falls", "Lip stones: {lip_thickness} thick.", "lip_thickness>0"),
    bullet("step: falls", "Foam under and behind each lip, so that none runs beneath."),
  ),
];
