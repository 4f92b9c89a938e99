import type { DrawnChart } from "./charts.js";
/** How a cell's text is drawn. Colours as `RRGGBB`; absent where the program chooses. */
export interface CellLook {
  /** The number format's code; "General" where none is set. */
  readonly format: string;
  readonly ink?: string;
  readonly fill?: string;
  /** Points. */
  readonly size?: number;
  readonly typeface?: string;
  readonly struck?: true;
  /** A line goes over it from corner to corner. */
  readonly crossed?: true;
  /** Steps that push the text away from its edge. */
  readonly indent: number;
  /** Degrees, as the file counts them: 1 to 180, 255 for letters one below another. */
  readonly turned?: number;
  /** What the cell holds is shown again and again, over its whole width. */
  readonly repeated?: true;
  readonly rightToLeft?: true;
  /** A long text goes on in a further line. */
  readonly wraps?: true;
}

/** What a rule of conditional format does to a cell. */
export type RuleLook = Partial<Pick<CellLook, "format" | "ink" | "fill" | "struck">>;

export interface Styles {
  /** By the number that a cell carries. */
  readonly cells: readonly CellLook[];
  readonly rules: readonly RuleLook[];
}

/** A conditional format: where it holds, when, and which look it gives. */
export interface Rule {
  /** `B4:B9 D4`. */
  readonly areas: string;
  readonly kind: string;
  readonly operator: string;
  readonly formulas: readonly string[];
  readonly look: number | undefined;
  /** Colours that it shades cells with by their values. */
  readonly shades?: readonly string[];
}

/** What the program lets a person type into cells, and what it says of it. */
export interface TypingRule {
  /** `B4:B9 D4`. */
  readonly areas: string;
  readonly kind: string;
  readonly formulas: readonly string[];
  /** What is shown beside the cell while it is typed into. */
  readonly prompt: string;
}

/** A run of columns set alike. */
export interface ColumnLook {
  readonly from: number;
  readonly to: number;
  readonly width?: number;
  readonly hidden: boolean;
}

export interface RowLook {
  readonly height?: number;
  readonly hidden: boolean;
}

/** Something drawn over the cells. */
export interface Drawn {
  /** `pic`, `sp`, `graphicFrame` … as the file calls it. */
  readonly kind: string;
  readonly text: string;
  /** Row and column of its corners; absent where its size is not told in cells. */
  readonly from?: { readonly row: number; readonly column: number };
  readonly to?: { readonly row: number; readonly column: number };
  /** How far into their cells the corners lie, in points down and across. */
  readonly inset?: Partial<
    Record<"from" | "to", { readonly row: number; readonly column: number }>
  >;
  /** Its size in points, where the file tells that in place of a second corner. */
  readonly size?: { readonly width: number; readonly height: number };
}

/** All that decides how the cells of a sheet appear on screen and paper. */
export interface SheetLook {
  readonly rows: ReadonlyMap<number, RowLook>;
  readonly columns: readonly ColumnLook[];
  readonly defaultHeight?: number;
  /** Rows of which nothing is said are hidden. */
  readonly hidesRows: boolean;
  readonly merges: readonly string[];
  readonly rules: readonly Rule[];
  readonly typing: readonly TypingRule[];
  /** After which rows and columns a person had a new page begin. */
  readonly breaks: { readonly rows: readonly number[]; readonly columns: readonly number[] };
  /** By place: `oddFooter`. */
  readonly margins: ReadonlyMap<string, string>;
  /** Attributes of the elements that set the page and the view, such as `pageSetup.scale`. */
  readonly settings: ReadonlyMap<string, string>;
  readonly drawn: readonly Drawn[];
  readonly charts: readonly DrawnChart[];
  /** Notes by the address of their cell. */
  readonly notes: ReadonlyMap<string, string>;
  /** Kinds of further parts and extensions: `table`, `control`, `x14 rules`. */
  readonly parts: readonly string[];
  /** Notes that stand open over the cells. */
  readonly openNotes: number;
}

/** How a workbook appears, and what a program does with it. */
export interface WorkbookLook {
  readonly styles: Styles;
  /** Attributes of `calcPr` and `workbookPr`, such as `calcPr.fullPrecision`. */
  readonly settings: ReadonlyMap<string, string>;
  /** Kinds of the parts that the package and the workbook point to. */
  readonly parts: readonly string[];
  /** The program that saved it, as it says itself. */
  readonly application: string;
  /** The workbook says that it carries macros. */
  readonly macros: boolean;
}
