import {
  type Across,
  type CalcDeclaration,
  calc,
  count,
  formula,
  number,
  type TableBlock,
  table,
  text,
} from "../../../engine/template/index.js";
import type { PlacedLine } from "../../plan/page-line.js";

/** Parts lines that stand in one cell: each stands on a line of its own. */
export const joint = "\n";

const BULLETED = formula(
  "BULLETED",
  "A line behind a bullet, whether it has one or not",
  { line: text },
  text,
  'IF(LEFT(line,1)="•",line,"•  "&line)',
  "definition",
);

const JOIN_LINES = formula(
  "JOIN_LINES",
  "A line over those that follow it, in one text; a line that is not wanted leaves them as they are",
  { line: text, after: text },
  text,
  'IF(LEN(line)=0,after,BULLETED(line)&IF(LEN(after)>0,CHAR(10)&after,""))',
  "definition",
);

const IS_WHOLE = formula(
  "IS_WHOLE",
  "1 where a line is wanted, whose place is then a whole number, else half",
  { place: number },
  number,
  "IF(place=INT(place),1,0.5)",
  "definition",
);

export const groupFormulas = [BULLETED, JOIN_LINES, IS_WHOLE] as const;

interface Grouped {
  readonly flow: string;
  /** The tables of lines wanted and of their words. */
  readonly choice: string;
  readonly list: string;
  /** Lines of the list that stand before these. */
  readonly before: number;
  readonly lines: readonly PlacedLine<string>[];
  readonly across: Across;
  readonly beside: Across;
}

/**
 * A stretch of a page whose rows are groups of lines: one that opens it, and beside it those that follow, line under line. Where
 * the one that would open a group is not wanted, its lines follow upon the group before.
 */
export function groupedFlow({ flow, choice, list, before, lines, across, beside }: Grouped): {
  readonly working: readonly TableBlock[];
  readonly count: CalcDeclaration;
  readonly page: TableBlock;
} {
  const openings = lines.flatMap(({ begins }, i) => (i === 0 || begins ? [before + i + 1] : []));
  const [groups, joined] = [`${flow}_groups`, `${flow}_joined`];
  const says = (line: number) => `INDEX(${list}.says,${line})`;
  const wanted = (line: number) => `IS_WHOLE(INDEX(${choice}.place,${line}))`;
  const last = before + lines.length;
  const tail = (row: number) => {
    const line = last + 1 - row;
    const after = row === 1 ? '""' : "above.tail";
    return openings.includes(line) ? `IF(${wanted(line)}=1,"",${after})` : `JOIN_LINES(${says(line)},${after})`;
  };
  const words = table(
    joined,
    "Lines joined",
    { rows: lines.length, note: "From the last line up: each with those that follow it, as far as the next group." },
    { tail: calc(text, tail, "Line and those after it", { first: tail(1) }) },
  );
  const placed = (row: number) =>
    row === 1 ? wanted(openings[0] as number) : `INT(above.place)+${wanted(openings[row - 1] as number)}`;
  const places = table(
    groups,
    "Groups wanted",
    { rows: openings.length, note: "A group that is wanted has a whole number; one that is not, the half behind it." },
    {
      place: calc(number, placed, "Place", { first: placed(1), decimals: 1 }),
      opening: calc(text, (row) => `${says(openings[row - 1] as number)}&""`, "Opening"),
      rest: calc(
        text,
        (row) => {
          const below = last - (openings[row - 1] as number);
          return below === 0 ? '""' : `INDEX(${joined}.tail,${below})&""`;
        },
        "Rest",
      ),
    },
  );
  const read = (column: string) => (row: number) =>
    `IF(${row}<=${flow}_count,PICK(${groups}.${column},${groups}.place,${row}),"")`;
  const page = table(
    flow,
    "",
    { rows: openings.length, paper: { across: { opening: across, rest: beside } } },
    { opening: calc(text, read("opening"), ""), rest: calc(text, read("rest"), "") },
  );
  const used = calc(count, `INT(INDEX(${groups}.place,${openings.length}))`, `Rows, ${flow}`);
  return { working: [words, places], count: used, page };
}
