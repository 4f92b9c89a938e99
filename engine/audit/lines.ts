import type { Cell } from "../template/model.js";
import { aligned, type Sighting, shiftsAt, summed } from "../workbook/match/align.js";
import type { WorkbookMatch } from "../workbook/match/result.js";
import { addressOf, type Position, positionOf } from "../workbook/read/address.js";
import type { CellContent, SheetContent } from "../workbook/read/content.js";

/** Where the lines and columns of a sheet as freshly written stand in the workbook. */
export interface SheetMap {
  /** Nothing was put in or taken out. */
  readonly still: boolean;
  /** The place of a cell of the fresh sheet; undefined where its line or column is gone. */
  to(at: Position): Position | undefined;
  /** The cell of the fresh sheet that stands here; undefined for a line or column put in. */
  from(at: Position): Position | undefined;
  /** As `to`, for the address of a cell. */
  addressOf(address: string): string | undefined;
}

const asWritten: SheetMap = {
  still: true,
  to: (at) => at,
  from: (at) => at,
  addressOf: (address) => address,
};

/**
 * Follows the lines of a fresh sheet by the cells that the match found and by texts that stand in one line
 * alone. A line between two known ones goes with that neighbour in whose company it has its own content.
 *
 * @param cells those of the template on this sheet
 */
export function sheetMap(
  cells: readonly Cell[],
  match: WorkbookMatch,
  fresh: SheetContent,
  found: SheetContent,
): SheetMap {
  const lines: Sighting[] = haveSameTexts(fresh, found) ? [] : bySignature(fresh, found);
  const columns: Sighting[] = [];
  for (const cell of cells) {
    const place = match.at.get(cell.id);
    if (place === undefined || place.sheet !== found.name) continue;
    const at = positionOf(place.address) as Position;
    lines.push({ from: cell.line, to: at.row, weight: 1 });
    columns.push({ from: cell.column, to: at.column, weight: 1 });
  }
  if ([...lines, ...columns].every(({ from, to }) => from === to)) return asWritten;
  const rowOf = axisMap(summed(lines), fresh, (from, to) => likeness(fresh, found, from, to));
  const columnOf = axisMap(summed(columns), fresh, () => 0);
  const to = ({ row, column }: Position) => both(rowOf.to(row), columnOf.to(column));
  return {
    still: false,
    to,
    addressOf: (address) => {
      const there = to(positionOf(address) as Position);
      return there === undefined ? undefined : addressOf(there);
    },
    from: ({ row, column }) => both(rowOf.from(row), columnOf.from(column)),
  };
}

const both = (row: number | undefined, column: number | undefined): Position | undefined =>
  row === undefined || column === undefined ? undefined : { row, column };

/** Does each text stand where it would be written, and no other one? Then no line tells of a move. */
function haveSameTexts(fresh: SheetContent, found: SheetContent): boolean {
  let texts = 0;
  for (const [address, cell] of fresh.cells) {
    const text = wordsOf(cell);
    if (text === undefined) continue;
    texts += 1;
    const now = found.cells.get(address);
    if (now === undefined || wordsOf(now) !== text) return false;
  }
  for (const cell of found.cells.values()) if (wordsOf(cell) !== undefined) texts -= 1;
  return texts === 0;
}

/** The text of a cell that shows one and calculates nothing. */
function wordsOf({ value, formula }: CellContent): string | undefined {
  if (formula !== undefined || typeof value !== "string") return undefined;
  return value.trim() || undefined;
}

/** Texts of a line that stand nowhere else, on both sheets. */
function bySignature(fresh: SheetContent, found: SheetContent): Sighting[] {
  const [there, here] = [signatures(fresh), signatures(found)];
  return [...there].flatMap(([text, from]) => {
    const to = here.get(text);
    return from === undefined || to === undefined ? [] : [{ from, to, weight: 2 }];
  });
}

/** The line of each text of a line; undefined where several have it. */
function signatures({ cells }: SheetContent): Map<string, number | undefined> {
  const texts = new Map<number, string[]>();
  for (const [address, cell] of cells) {
    const words = wordsOf(cell);
    if (words === undefined) continue;
    const { row, column } = positionOf(address) as Position;
    const parts = texts.get(row);
    if (parts === undefined) texts.set(row, [`${column} ${words}`]);
    else parts.push(`${column} ${words}`);
  }
  const lines = new Map<string, number | undefined>();
  for (const [row, parts] of texts) {
    const text = parts.join("\n");
    lines.set(text, lines.has(text) ? undefined : row);
  }
  return lines;
}

/** How many cells of the line `from` of the fresh sheet have their like in the line `to` of the found one. */
function likeness(fresh: SheetContent, found: SheetContent, from: number, to: number): number {
  let count = 0;
  for (let column = 1; column <= 12; column++) {
    const then = fresh.cells.get(addressOf({ row: from, column }));
    const now = found.cells.get(addressOf({ row: to, column }));
    if (then === undefined && now === undefined) continue;
    const alike =
      (then?.formula === undefined) === (now?.formula === undefined) &&
      (then?.formula !== undefined || then?.value === now?.value);
    count += alike ? 1 : -1;
  }
  return count;
}

interface AxisMap {
  to(line: number): number | undefined;
  from(line: number): number | undefined;
}

function axisMap(
  sightings: readonly Sighting[],
  fresh: SheetContent,
  like: (from: number, to: number) => number,
): AxisMap {
  const known = aligned(sightings);
  const to = new Map<number, number>(known);
  const from = new Map<number, number>([...known].map(([a, b]) => [b, a]));
  const last = Math.max(0, ...known.keys(), ...lastOf(fresh));
  const shiftAt = (line: number): number => {
    const shifts = shiftsAt(known, line);
    return shifts.reduce((best, one) =>
      like(line, line + one) > like(line, line + best) ? one : best,
    );
  };
  const lines = Array.from({ length: last }, (_, i) => i + 1).filter((line) => !to.has(line));
  // blank lines come last: they must not take the place of one that holds something
  for (const blank of [false, true]) {
    for (const line of lines) {
      const there = line + shiftAt(line);
      if (like(line, there) > 0 === blank || there < 1 || from.has(there)) continue;
      to.set(line, there);
      from.set(there, line);
    }
  }
  const beyond = last === 0 ? 0 : shiftAt(last);
  return {
    to: (line) => (line > last ? line + beyond : to.get(line)),
    from: (line) => (line - beyond > last ? line - beyond : from.get(line)),
  };
}

function lastOf({ cells }: SheetContent): number[] {
  let last = 0;
  for (const address of cells.keys()) {
    const { row, column } = positionOf(address) as Position;
    last = Math.max(last, row, column);
  }
  return [last];
}
