import { area, type CalcDeclaration, calc, count, length, table, text } from "../../../engine/template/index.js";
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

/** The cuts of a piece that still fit on the roll that lies open. */
const onOpen = (left: string) => `MIN(pieces,CUTS_FROM(${left},cut_length))`;

const opened = (k: number): CalcDeclaration => {
  const rolls = (left: string) => `IF(roll=${k},WHOLE_UP((pieces-${onOpen(left)})/roll_cuts),0)`;
  return calc(count, rolls(`above.left_${k}`), `Roll ${k}: opened`, { first: rolls("0[ft]") });
};

const left = (k: number): CalcDeclaration => {
  const rest = (before: string) =>
    `IF(roll=${k},ROLL_LEFT(${before},run,opened_${k},pieces,cut_length,roll_cuts,roll_length),${before})`;
  return calc(length, rest(`above.left_${k}`), `Roll ${k}: left`, {
    first: rest("0[ft]"),
    blank: `above.left_${k}`,
  });
};

/** The first roll that takes the least. */
const bestRoll = rollNumbers
  .slice(0, -1)
  .reduceRight((otherwise, k) => `IF(cost_${k}=least,${k},${otherwise})`, String(rollNumbers.at(-1)));

const columns = (name: string, of: (k: number) => CalcDeclaration) =>
  Object.fromEntries(rollNumbers.map((k) => [`${name}_${k}`, of(k)]));

/** Every piece on every roll; then, for rolls sold whole, when a new one must be opened. */
export const linerWorking = table(
  "liner_working",
  "Working: pieces on rolls",
  {
    working: true,
    rows: pieceRows,
    beside: "liner_pieces",
    filled: "length>0",
    note: "A cut goes on the roll that lies open if it still fits; if not, a new roll is opened and the rest of the old one is waste.",
  },
  {
    piece: calc(text, "name", "Piece"),
    least: calc(area, `MIN(${rollNumbers.map((k) => `cost_${k}`).join(", ")})`, "Least liner and seams"),
    ...columns("cost", cost),
    best: calc(count, bestRoll, "Roll with the least"),
    roll_cuts: calc(count, "MAX(1,CUTS_FROM(roll_length,cut_length))", "Cuts of a whole roll"),
    ...columns("opened", opened),
    ...columns("left", left),
  },
);
