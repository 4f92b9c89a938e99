import {
  area,
  type CalcDeclaration,
  calc,
  count,
  length,
  type TableBlock,
  table,
} from "../../../engine/template/index.js";
import type { Lined } from "./lined.js";
import { pieceRows } from "./pieces.js";
import { rollNumbers } from "./rolls.js";

const roll = (column: string, k: number) => `INDEX(liner_rolls.${column},${k})`;

const cost = (k: number): CalcDeclaration => {
  return calc(
    area,
    `COST_ON_ROLL(width,length,${roll("width", k)},${roll("roll_length", k)},seam_lap,seam_worth)`,
    `Roll ${k}: liner and seams`,
  );
};

const columns = (name: string, of: (k: number) => CalcDeclaration) =>
  Object.fromEntries(rollNumbers.map((k) => [`${name}_${k}`, of(k)]));

/** Every piece on every roll. */
export const linerWorking = (lined: Lined): TableBlock =>
  table(
    "liner_working",
    "Working: pieces on rolls",
    { working: true, rows: pieceRows(lined), beside: "liner_pieces", filled: "length>0" },
    {
      ...columns("cost", cost),
      best: calc(count, "FIRST_LEAST(cost_1..cost_6)", "Roll with the least"),
    },
  );

const ofPiece = (column: string, otherwise: string) =>
  `IF(key>0,INDEX(liner_pieces.${column},MAX(1,MOD(key,1000))),${otherwise})`;
const open = "IF(INT(above.key/1000)=INT(key/1000),above.left_over,0[ft])";
const opened = (left: string) =>
  `IF(key>0,WHOLE_UP((pieces-MIN(pieces,CUTS_FROM(${left},cut)))/MAX(1,CUTS_FROM(roll,cut))),0)`;
const left = (before: string) =>
  `IF(key>0,ROLL_LEFT(${before},pieces*cut,opened,pieces,cut,MAX(1,CUTS_FROM(roll,cut)),roll),0)`;

/** For rolls sold whole: the pieces of the plan, roll by roll, and when a new one must be opened. */
export const linerCuts = (lined: Lined): TableBlock =>
  table(
    "liner_cuts",
    "Working: cuts in order",
    {
      working: true,
      rows: pieceRows(lined),
      note: "A cut goes on the roll that lies open if it still fits; if not, a new roll is opened and the rest of the old one is waste.",
    },
    {
      key: calc(count, (row) => `SMALL(liner_pieces.rank,${row})`, "Roll and piece", {
        note: "A thousand times the row of the roll, and the piece.",
      }),
      pieces: calc(count, ofPiece("pieces", "0"), "Cuts"),
      cut: calc(length, ofPiece("cut_length", "0[ft]"), "Length of a cut"),
      roll: calc(length, ofPiece("roll_length", "0[ft]"), "Roll length"),
      opened: calc(count, opened(open), "Rolls opened", { first: opened("0[ft]") }),
      left_over: calc(length, left(open), "Left on the roll", { first: left("0[ft]") }),
    },
  );
