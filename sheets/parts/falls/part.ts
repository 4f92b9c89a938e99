import { bullet, bulletEachRow, under } from "../../plan/page-line.js";
import { lipKinds } from "../../tables/lips.js";
import { channelFormulas } from "../../vocabulary/channel.js";
import { counted } from "../../vocabulary/counted.js";
import { weirFormulas } from "../../vocabulary/weir.js";
import { part } from "../part.js";
import { coursePoints, profile, profileForCrew, profileForCustomer } from "./drawing.js";
import { fallsBlocks } from "./falls.js";
import { fallsTable } from "./falls-table.js";
import { lipSaid } from "./lip-said.js";
import { fallsInProposal, wordsOfFalls } from "./proposal-said.js";
import { setOut, setOutPoints } from "./set-out.js";
import { fallTasks } from "./tasks.js";

const lookSaid = "PICK(looks.said,looks.name,look)";

export const falls = part("Falls", "What each lip gets, and how the water goes over it.", {
  blocks: {
    Falls: [profile, ...fallsBlocks],
    Wording: [lipSaid, ...setOutPoints],
    Drawings: [profile],
    "Drawing points": coursePoints,
  },
  below: { "Water tables": [lipKinds] },
  formulas: [...weirFormulas, ...channelFormulas],
  title: "Disappearing waterfall",
  cells: { "proposal said": { ...fallsInProposal, ...wordsOfFalls } },
  adds: {
    given: "INDEX(falls.lip_across,1)>0",
    "wet area": "SUMPRODUCT(falls.width_counted,falls.drop_counted)",
  },
  takeoff: [
    {
      what: "foam, a can for each ‹4 ft|1.22 m› of lip or ‹12 ft²|1.1 m²› of face",
      code: "foam",
      wanted: "lip_length/4[ft]+fall_face/12[ft²]",
      unit: "each",
    },
  ],
  tasks: fallTasks,
  crew: [
    // lips that share a level: the one with less water over it stands higher
    ...under(
      "Set out falls, build their base",
      bullet(
        "step: berms",
        `{${counted("falls_built", "fall", "falls")}}, {lip_length} of lip together, on cut or compacted ground; drops as in the table of lips.`,
        "falls_built>0",
      ),
    ),
    ...under(
      "Build back walls of the falls",
      bullet(
        "step: berms",
        "Stone behind the liner that holds the bank up: {back_wall|0}; bring it first (hours: bring stone to the falls).",
        "back_wall>0",
      ),
    ),
    ...under(
      "Bring stone to the falls",
      bullet(
        "step: falls",
        "Lips first, beside the liner, never on it: {built_stone|1} of lips and face, with that of the back walls.",
        "built_stone>0",
      ),
    ),
    ...under(
      "Choose and set the lips",
      ...bulletEachRow("step: falls", fallsTable, "{name}: {lip}{stones}{raised}.", {
        when: "lip_built>0",
        beside: [lipSaid],
      }),
    ),
  ],
  proposal: bulletEachRow(
    "scope",
    fallsTable,
    `{name}: {IF(lips_beside>0,"one of "&FIXED(lips_beside+1,0)&" lips side by side,",IF(lip_built>0,"a fall","a pot"))} {lip_across} wide and {drop_counted} high, {IF(LEN(${lookSaid})>0,${lookSaid},look)}.`,
    { when: "width_counted>0" },
  ),
  proposalDrawings: [profileForCustomer],
  crewDrawings: [profileForCrew, ...setOut],
  told: ["falls.width", "falls.width_plus", "falls.drop", "falls.drop_plus", "falls.look"],
});
