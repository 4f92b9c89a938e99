import { columnLetters, positionOf } from "../workbook/read/address.js";
import type { CellContent, SheetContent } from "../workbook/read/content.js";
import type { SheetLook, WorkbookLook } from "../workbook/read/look/content.js";
import { orWriteAgain } from "./cures.js";
import type { Finding, Grade } from "./finding.js";
import { shownBy } from "./look/format/shown.js";
import type { SheetPair } from "./sheet-pairs.js";
import { short } from "./subject.js";

/** Lines that are told with what stands in them; the rest are counted. */
const mostTold = 3;
/** Of what stands in a line, so much is told. */
const mostWords = 48;

const show = "Show it again, and see what it holds.";
const showRows = `Select all rows, right-click, Unhide, and see what they hold; ${orWriteAgain}`;
const showUsed = `Show all rows to read them (select all rows, right-click, Unhide), ${orWriteAgain}`;

/** What else is known of a sheet. */
export interface HiddenOn {
  /** As it was when it was written, where that is needed and known. */
  readonly before: SheetLook | undefined;
  /** The page is given to customers, suppliers or crew: a line that it hides is one that its reader never learns of. */
  readonly handout: boolean;
}

/**
 * Sheets, rows and columns that hold something and are hidden, where as freshly written they would be in sight. Rows that
 * were written so, and that an edit brought into use, are only to know.
 */
export function checkHidden(
  pair: SheetPair,
  look: WorkbookLook | undefined,
  { before, handout }: HiddenOn,
): Finding[] {
  const { found, fresh } = pair;
  const tell = (what: string, grade: Grade = "doubtful", advice = show): Finding => ({
    ...{ grade, code: "hidden", where: `sheet ${found.name}` },
    ...{ found: what, expected: "in sight", advice },
  });
  const ofLines = handout ? "wrong" : "doubtful";
  const whole = found.state !== "visible" && fresh.state === "visible";
  const rows = hiddenLines(pair, look, "row", (row) => !wasHidden(before, row));
  const used = before && hiddenLines(pair, look, "row", (row) => wasHidden(before, row));
  const columns = hiddenLines(pair, look, "column");
  return [
    ...(whole ? [tell("the sheet is hidden")] : []),
    ...(rows === undefined ? [] : [tell(rows, ofLines, showRows)]),
    ...(columns === undefined ? [] : [tell(columns, ofLines)]),
    ...(used === undefined
      ? []
      : [tell(`${used}, as written, and in use since an edit`, "to know", showUsed)]),
  ];
}

/** Does a sheet hold rows out of sight that would be in sight as freshly written? */
export const hidesRows = (pair: SheetPair): boolean =>
  hiddenLines(pair, undefined, "row") !== undefined;

type Axis = "row" | "column";

const wasHidden = (before: SheetLook | undefined, row: number): boolean =>
  before !== undefined && isHiddenRow(before, row);

/**
 * The hidden rows or columns of a sheet in words; undefined where there are none that hold something.
 * @param asked of the lines as freshly written, those that are looked at
 */
function hiddenLines(
  { found, fresh, map }: SheetPair,
  look: WorkbookLook | undefined,
  axis: Axis,
  asked: (home: number) => boolean = () => true,
): string | undefined {
  const [now, then] = [found.look, fresh.look];
  if (now === undefined || then === undefined) return countOf(found, fresh, axis);
  const isHidden = axis === "row" ? isHiddenRow : isHiddenColumn;
  const lines = linesOf(found, axis, (line) => isHidden(now, line));
  const told = [...lines].flatMap(([line, cells]) => {
    const home = map.from(axis === "row" ? { row: line, column: 1 } : { row: 1, column: line });
    if (home !== undefined && isHidden(then, home[axis])) return [];
    if (!asked(home?.[axis] ?? 0)) return [];
    const words = wordsOf(cells, look);
    return words === "" ? [] : [`${axis === "row" ? line : columnLetters(line)} "${words}"`];
  });
  return told.length === 0 ? undefined : saidOf(told, axis);
}

/** `rows 12 "STOP. Nobody…" and 13 "…" are hidden`. */
function saidOf(told: readonly string[], axis: Axis): string {
  const [first, ...more] = told.slice(0, mostTold) as [string, ...string[]];
  const left = told.length - mostTold;
  if (more.length === 0) return `${axis} ${first} is hidden`;
  if (left > 0) return `${axis}s ${[first, ...more].join(", ")} and ${left} more are hidden`;
  const last = more.pop();
  return `${axis}s ${[first, ...more].join(", ")} and ${last} are hidden`;
}

/** Without looks nobody knows which. */
function countOf(found: SheetContent, fresh: SheetContent, axis: Axis): string | undefined {
  const count =
    axis === "row"
      ? found.hiddenRows - fresh.hiddenRows
      : found.hiddenColumns - fresh.hiddenColumns;
  if (count <= 0) return undefined;
  return count === 1 ? `1 ${axis} is hidden` : `${count} ${axis}s are hidden`;
}

const isHiddenRow = ({ rows, hidesRows: others }: SheetLook, row: number): boolean =>
  rows.get(row)?.hidden ?? others;

const isHiddenColumn = ({ columns }: SheetLook, column: number): boolean =>
  columns.some(({ from, to, hidden }) => hidden && column >= from && column <= to);

/** The cells of hidden lines, line by line, each in the order in which they are read. */
function linesOf(
  { cells }: SheetContent,
  axis: Axis,
  isHidden: (line: number) => boolean,
): Map<number, readonly CellContent[]> {
  const across: Axis = axis === "row" ? "column" : "row";
  const lines = new Map<number, { at: number; cell: CellContent }[]>();
  const hidden = new Map<number, boolean>();
  for (const [address, cell] of cells) {
    const at = positionOf(address);
    if (at === undefined) continue;
    const line = at[axis];
    const own = hidden.get(line) ?? isHidden(line);
    hidden.set(line, own);
    if (!own) continue;
    const others = lines.get(line);
    if (others === undefined) lines.set(line, [{ at: at[across], cell }]);
    else others.push({ at: at[across], cell });
  }
  const sorted = [...lines].sort(([a], [b]) => a - b);
  return new Map(
    sorted.map(([line, own]) => [line, own.sort((a, b) => a.at - b.at).map(({ cell }) => cell)]),
  );
}

/** The first words in a line; figures alone where it has none, and nothing where it holds but zeros and marks. */
function wordsOf(cells: readonly CellContent[], look: WorkbookLook | undefined): string {
  const holds = cells.filter(({ value }) => isSomething(value));
  const said = holds.map(({ value, style }) => {
    const format = look?.styles.cells[style ?? 0]?.format ?? "General";
    return shownBy(format, value as number | string).trim();
  });
  return short(said.filter(Boolean).slice(0, 2).join(" ").replace(/\s+/g, " "), mostWords);
}

const isSomething = (value: CellContent["value"]): boolean =>
  typeof value === "string" ? value.trim() !== "" : typeof value === "number" && value !== 0;
