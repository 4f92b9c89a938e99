import type { Position } from "../../workbook/read/address.js";
import type { Area } from "../../workbook/read/area.js";
import type { Drawn, SheetLook } from "../../workbook/read/look/content.js";

/** Widths of columns count in digits of a typeface; this is less than any takes, so that more cells count as covered. */
const pointsInDigit = 4.5;
const usualWidth = 8;
const usualHeight = 12;
/** Rows and columns that one thing may go over before it counts as lying over all. */
const mostCovered = 2000;

/** The cells that something drawn lies over; undefined where that cannot be told, so that it may be any. */
export function extentOf({ from, to, size }: Drawn, look: SheetLook): Area | undefined {
  if (from === undefined) return undefined;
  if (to !== undefined) return { from, to };
  if (size === undefined) return undefined;
  const row = last(from.row, size.height, (at) => heightOf(look, at));
  const column = last(from.column, size.width, (at) => widthOf(look, at));
  return row === undefined || column === undefined ? undefined : { from, to: { row, column } };
}

/** The last row or column that a length goes into: the first one may be begun anywhere, so the next counts too. */
function last(first: number, length: number, sizeOf: (at: number) => number): number | undefined {
  let left = length;
  for (let at = first + 1; at < first + mostCovered; at++) {
    if (left <= 0) return at - 1;
    left -= sizeOf(at);
  }
  return undefined;
}

const heightOf = ({ rows, defaultHeight, hidesRows }: SheetLook, row: number): number => {
  const { height = defaultHeight ?? usualHeight, hidden = hidesRows } = rows.get(row) ?? {};
  return hidden ? 0 : height;
};

const widthOf = ({ columns }: SheetLook, column: number): number => {
  const { width = usualWidth, hidden = false } =
    columns.find(({ from, to }) => column >= from && column <= to) ?? {};
  return hidden ? 0 : width * pointsInDigit;
};

/** Points by which a picture may go over the edge of its place: programs reckon widths a little differently. */
const overEdge = 4;

/** Does something drawn lie within an area? Not where its size is told nowhere. */
export function liesWithin(one: Drawn, { from, to }: Area, look: SheetLook): boolean {
  const axes = ["row", "column"] as const;
  return axes.every((axis) => {
    const first = one.from?.[axis] ?? 0;
    if (first < from[axis]) return false;
    const sizeOf = (at: number) => (axis === "row" ? heightOf(look, at) : trueWidthOf(look, at));
    let room = overEdge;
    for (let at = first; at <= to[axis]; at++) room += sizeOf(at);
    const inset = one.inset?.from?.[axis] ?? 0;
    if (one.to === undefined) {
      const length = one.size?.[axis === "row" ? "height" : "width"] ?? Number.POSITIVE_INFINITY;
      return inset + length <= room;
    }
    const last = one.to[axis];
    return last <= to[axis] || (last === to[axis] + 1 && (one.inset?.to?.[axis] ?? 0) <= overEdge);
  });
}

/** Points of a column as it is written: 7 pixels for each digit of the workbook's type, and 5. */
const trueWidthOf = (look: SheetLook, column: number): number => {
  const digits = widthOf(look, column) / pointsInDigit;
  return digits === 0 ? 0 : (digits * 7 + 5) * 0.75;
};

/** Have two areas a cell in common? Where no areas are set, all cells count. */
export const meets = (areas: readonly Area[] | undefined, { from, to }: Area): boolean =>
  areas === undefined ||
  areas.some(
    (one) =>
      from.row <= one.to.row &&
      to.row >= one.from.row &&
      from.column <= one.to.column &&
      to.column >= one.from.column,
  );

/** Is a cell under something drawn? What lies nobody knows where lies over all cells. */
export const covers = (extent: Area | undefined, { row, column }: Position): boolean =>
  extent === undefined ||
  (row >= extent.from.row &&
    row <= extent.to.row &&
    column >= extent.from.column &&
    column <= extent.to.column);
