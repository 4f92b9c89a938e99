import { columnLetters } from "../../workbook/read/address.js";
import type { SheetLook } from "../../workbook/read/look/content.js";
import type { Finding } from "../finding.js";
import { grouped } from "../subject.js";
import { type LookPair, lookFinding, shownCells } from "./compared.js";

/** Less than this of the room that a text was given cuts it off. */
const leastShare = 0.7;
/** Points of a row, and digits of a column, where a sheet says nothing. */
const [usualHeight, usualWidth] = [15, 8.43];

/** Rows and columns that were made too small for what stands in them; hidden ones are told elsewhere. */
export function checkSpaces(pair: LookPair): Finding[] {
  const { found, now, then } = pair;
  const rows = new Map<number, number>();
  const columns = new Map<number, number>();
  for (const { at, home } of shownCells(pair)) {
    rows.set(at.row, home.row);
    columns.set(at.column, home.column);
  }
  const low = [...rows].flatMap(([row, home]) => {
    const [is, was] = [heightOf(now, row), heightOf(then, home)];
    if (now.rows.get(row)?.hidden || is >= was * leastShare) return [];
    const where = `${found.name}!${row}:${row}`;
    return [lookFinding(where, `a row ${is} points high, which cuts its text`, `${was} points`)];
  });
  const narrow = [...columns].flatMap(([column, home]) => {
    const [is, was] = [columnOf(now, column), columnOf(then, home)];
    if (is.hidden || is.width >= was.width * leastShare) return [];
    const letters = columnLetters(column);
    const found_ = `a column ${is.width} digits wide, which cuts its text`;
    return [lookFinding(`${found.name}!${letters}:${letters}`, found_, `${was.width} digits`)];
  });
  const all = now.hidesRows && !then.hidesRows;
  return [
    ...grouped(low, 3),
    ...grouped(narrow, 3),
    ...(all
      ? [lookFinding(`sheet ${found.name}`, "all rows hidden but those set apart", "rows in sight")]
      : []),
  ];
}

const heightOf = ({ rows, defaultHeight }: SheetLook, row: number): number =>
  rows.get(row)?.height ?? defaultHeight ?? usualHeight;

function columnOf({ columns }: SheetLook, column: number): { width: number; hidden: boolean } {
  const own = columns.find(({ from, to }) => column >= from && column <= to);
  return { width: own?.width ?? usualWidth, hidden: own?.hidden ?? false };
}
