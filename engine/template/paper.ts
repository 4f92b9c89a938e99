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
  | "beside"
  | "small"
  | "right"
  | "figure"
  | "caption"
  | "price"
  | "label"
  | "field"
  | "blank"
  | "slot"
  | "photo"
  | "logo"
  | "alarm";

/** How a table stands on a page handed out: no units, each column at its place across the page. */
export interface PaperTable {
  readonly across: Readonly<Record<string, Across>>;
  /** The columns' labels stand over them. */
  readonly header?: true;
  /** Columns set flush right. */
  readonly right?: readonly string[];
  /** Lines that begin so are headings; all lines then keep clear of the rule above them, where no rules part them. */
  readonly headingMark?: string;
  /** Lines that begin so are set in bold, their first column alone. */
  readonly boldMark?: string;
  /** Lines that begin so are set in alarm: a danger, before all else. */
  readonly alarmMark?: string;
  /** Boxes to be filled in by hand, at the right of lines that begin with a mark. */
  readonly boxes?: { readonly mark: string; readonly across: readonly Across[] };
  /** A count cell: so many rows are in use, from the first on; those below take no paper, but two. */
  readonly used?: string;
  /** Points of a row; as its text wants it, without this. */
  readonly height?: number;
  /** Points of its type; 10, without this. */
  readonly size?: number;
  /** Rows in sight below those in use; two, without this. */
  readonly spare?: number;
  /** A fine rule below each row. */
  readonly ruled?: true;
}
