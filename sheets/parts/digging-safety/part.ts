import { bullet } from "../page-line.js";
import { part } from "../part.js";
import { hire, production, withMachine } from "../rates.js";
import { task } from "../task.js";
import { crewOfSafety } from "./crew-lines.js";
import { placeList, placesDug } from "./places.js";
import { safeDig, slopeTable } from "./safety.js";

export const diggingSafety = part("Digging safety", "Whether each dig is safe to stand in.", {
  section: "Dig safety",
  blocks: { Earthwork: [safeDig, placesDug] },
  below: { Earthwork: [slopeTable, placeList] },
  rates: [
    hire("shoring", "Shoring or shields on hire for the job, of face held", "$/ft2"),
    hire("inspection", "Inspection of a dig by a hired competent person", "$/each"),
    hire("engineer", "Engineer's design, of a wall or of a dig's protection", "$/each"),
  ],
  tasks: [
    task(
      "Set shoring and pull it again",
      "dig",
      "shored_face",
      withMachine(
        production("shoring-set", "Set shoring and pull it again", "ft2", 22),
        0.3,
        production("shoring-set-hand", "Set shoring and pull it again, by hand", "ft2", 14),
      ),
      ["open_dig", "by_access", "by_haul"],
    ),
  ],
  crew: crewOfSafety,
  proposal: [bullet("protection", "Shoring of the deep digs, set and taken out again.", "shored_face>0")],
});
