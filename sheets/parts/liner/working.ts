import {
  area,
  type CalcDeclaration,
  calc,
  count,
  length,
  table,
  text,
} from "../../../engine/template/index.js";
import { pieceRows } from "./pieces.js";
import { rollNumbers } from "./rolls.js";

const roll = (column: string, k: number) => `INDEX(liner_rolls.${column}, ${k})`;

/** Stands for a roll that cannot be used, so that it is never the least. */
const never = "1000000[ft²]";

const cost = (k: number): CalcDeclaration => {
  const on = (across: string, along: string) =>
    `PIECE_COST(${across}, ${along}, ${roll("width", k)}, ${roll("roll_length", k)}, seam_lap, seam_worth)`;
  return calc(
    area,
    `IF(AND(${roll("width", k)} > seam_lap, ${roll("roll_length", k)} > seam_lap), MIN(${on("width", "length")}, ${on("length", "width")}), ${never})`,
    `Roll ${k}: liner and seams`,
  );
};

/** The cuts of a piece that still fit on the roll that lies open. */
const onOpen = (left: string) => `MIN(pieces, INT(ROUND(${left} / MAX(0.001[ft], cut_length), 6)))`;
const cutsOfRoll = (k: number) =>
  `MAX(1, INT(ROUND(${roll("roll_length", k)} / MAX(0.001[ft], cut_length), 6)))`;

const opened = (k: number): CalcDeclaration => {
  const rolls = (left: string) =>
    `IF(roll = ${k}, ROUNDUP(ROUND((pieces - ${onOpen(left)}) / ${cutsOfRoll(k)}, 6), 0), 0)`;
  return calc(count, rolls(`above.left_${k}`), `Roll ${k}: opened`, { first: rolls("0[ft]") });
};

const left = (k: number): CalcDeclaration => {
  const rest = (before: string) =>
    `IF(roll = ${k}, IF(opened_${k} = 0, ${before} - run, ${roll("roll_length", k)} - (pieces - ${onOpen(before)} - (opened_${k} - 1) * ${cutsOfRoll(k)}) * cut_length), ${before})`;
  return calc(length, rest(`above.left_${k}`), `Roll ${k}: left`, {
    first: rest("0[ft]"),
    blank: `above.left_${k}`,
  });
};

const columns = (name: string, of: (k: number) => CalcDeclaration) =>
  Object.fromEntries(rollNumbers.map((k) => [`${name}_${k}`, of(k)]));

/** Every piece on every roll; then, for rolls sold whole, when a new one must be opened. */
export const linerWorking = table(
  "liner_working",
  "Working: pieces on rolls",
  {
    rows: pieceRows,
    beside: "liner_pieces",
    filled: "length > 0",
    note: "A cut goes on the roll that lies open if it still fits; if not, a new roll is opened and the rest of the old one is waste.",
  },
  {
    piece: calc(text, "name", "Piece"),
    least: calc(
      area,
      `MIN(${rollNumbers.map((k) => `cost_${k}`).join(", ")})`,
      "Least liner and seams",
    ),
    ...columns("cost", cost),
    ...columns("opened", opened),
    ...columns("left", left),
  },
);
