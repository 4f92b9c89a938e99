import type { PanelBlock, PaperPlace, PaperRow } from "./declare.js";
import type { Across, PaperLook } from "./paper.js";

/** A place across a panel: with standing words, or a cell with its name and formula. */
export const place = (
  across: Across,
  look: PaperLook,
  says: PaperPlace["says"] | PaperPlace["cell"],
  rest: Pick<PaperPlace, "down"> = {},
): PaperPlace => {
  const words = typeof says === "string" ? { says } : says === undefined ? {} : { cell: says };
  return Object.freeze({ across, look, ...words, ...rest });
};

/** A row of a panel: its height in points, and the places across it. */
export const row = (height: number, ...places: readonly PaperPlace[]): PaperRow =>
  Object.freeze({ height, places });

/** A stretch of a page laid out in a grid of twelve columns: a letterhead, figures in boxes, a form. */
export const panel = (
  rows: readonly PaperRow[],
  options: Pick<PanelBlock, "newPage" | "unlessZero"> = {},
): PanelBlock => {
  const cells = rows.flatMap(({ places }) => places.flatMap((one) => (one.cell ? [one.cell] : [])));
  return Object.freeze({
    kind: "panel",
    heading: "",
    rows,
    cells: Object.fromEntries(cells),
    ...options,
  });
};

/** Where a cell stands in a panel: its row (from 0) and its column. */
export function placeInPanel({ rows }: PanelBlock, name: string): { row: number; column: number } {
  for (const [i, { places }] of rows.entries()) {
    const found = places.find(({ cell }) => cell?.[0] === name);
    if (found !== undefined) return { row: i, column: found.across[0] };
  }
  throw new Error(`The panel has no place for "${name}".`);
}
