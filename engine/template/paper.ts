import type { CalcDeclaration } from "./declare.js";

/** Columns of the grid of a page handed out: the first (from 1), and how many. */
export type Across = readonly [from: number, count: number];

/** How many columns the grid of a page handed out has. */
export const paperColumns = 12;

/** How a place on paper is set: by what it is for. */
export type PaperLook =
  | "name"
  | "title"
  | "heading"
  | "text"
  | "strong"
  | "small"
  | "right"
  | "figure"
  | "caption"
  | "price"
  | "label"
  | "field"
  | "blank"
  | "slot"
  | "alarm";

/** A place in a panel: standing words, or a cell with a formula. */
export interface PaperPlace {
  readonly across: Across;
  readonly look: PaperLook;
  readonly says?: string;
  /** The name of a cell, and its declaration. */
  readonly cell?: readonly [name: string, declaration: CalcDeclaration];
  /** Rows of the panel that it takes; one, without this. */
  readonly down?: number;
}

/** A row of a panel with its height in points. */
export interface PaperRow {
  readonly height: number;
  readonly places: readonly PaperPlace[];
}

/** A stretch of a page laid out in a grid: a letterhead, figures in boxes, a form to be filled in by hand. */
export interface PanelBlock {
  readonly kind: "panel";
  /** Always "": what heads a panel is a place in it. */
  readonly heading: string;
  readonly rows: readonly PaperRow[];
  readonly cells: Readonly<Record<string, CalcDeclaration>>;
  /** It begins a page. */
  readonly newPage?: true;
  /** A count: while it is zero as the workbook is written, the page that the panel begins takes no paper. */
  readonly unlessZero?: string;
}

/** How a table stands on a page handed out: no units, each column at its place across the page. */
export interface PaperTable {
  readonly across: Readonly<Record<string, Across>>;
  /** The columns' labels stand over them. */
  readonly header?: true;
  /** Columns set flush right. */
  readonly right?: readonly string[];
  /** Lines that begin so are headings. */
  readonly headingMark?: string;
  /** Lines that begin so are set in bold. */
  readonly boldMark?: string;
  /** Lines that begin so are set in alarm: a danger, before all else. */
  readonly alarmMark?: string;
  /** Boxes to be filled in by hand, at the right of lines that begin with a mark. */
  readonly boxes?: { readonly mark: string; readonly across: readonly Across[] };
  /** A count cell: so many rows are in use, from the first on; those below take no paper, but two. */
  readonly used?: string;
  /** Points of a row; as its text wants it, without this. */
  readonly height?: number;
}

export const place = (
  across: Across,
  look: PaperLook,
  says: PaperPlace["says"] | PaperPlace["cell"],
  rest: Pick<PaperPlace, "down"> = {},
): PaperPlace => {
  const words = typeof says === "string" ? { says } : says === undefined ? {} : { cell: says };
  return Object.freeze({ across, look, ...words, ...rest });
};

export const row = (height: number, ...places: readonly PaperPlace[]): PaperRow =>
  Object.freeze({ height, places });

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
