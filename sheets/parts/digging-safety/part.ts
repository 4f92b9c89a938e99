import { bullet } from "../../plan/page-line.js";
import { hired } from "../hire.js";
import { part } from "../part.js";
import { production, withMachine } from "../rates.js";
import { task } from "../task.js";
import { crewOfSafety } from "./crew-lines.js";
import { placeList, placesDug } from "./places.js";
import { safeDig, slopeTable } from "./safety.js";

export const diggingSafety = part("Digging safety", "Whether each dig is safe to stand in.", {
  section: "Dig safety",
  blocks: { Earthwork: [safeDig, placesDug] },
  below: { Earthwork: [slopeTable, placeList] },
  hires: [
    hired(
      "Shoring and shields",
      "shored_face",
      "shoring",
      "Shoring or shields on hire for the job, of face held",
      "$/ft²",
    ),
    hired(
      "Inspections of the digs by others",
      "inspections_hired",
      "inspection",
      "Inspection of a dig by a hired competent person",
      "$/each",
    ),
    hired(
      "Engineer's designs",
      "engineer_designs",
      "engineer",
      "Engineer's design, of a wall or of a dig's protection",
      "$/each",
      1000,
    ),
  ],
  tasks: [
    task(
      "Set shoring and pull it again",
      "dig",
      "shored_face",
      withMachine(
        production("shoring-set", "Set shoring and pull it again", "ft²", 22),
        0.3,
        production("shoring-set-hand", "Set shoring and pull it again, by hand", "ft²", 14),
      ),
      ["open_dig", "by_access", "by_haul"],
    ),
  ],
  crew: crewOfSafety,
  proposal: [bullet("protection", "Shoring of the deep digs, set and taken out again.", "shored_face>0")],
});
