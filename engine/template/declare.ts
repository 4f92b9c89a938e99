import type { ChartBlock } from "./chart.js";
import type { Asked, CalcDeclaration, CellDeclaration, InputValue } from "./declare-cells.js";
import type { Across, PaperLook, PaperTable } from "./paper.js";

export * from "./chart.js";
export * from "./declare-cells.js";

/** Cells under one another: label, value, unit. */
export interface LinesBlock {
  readonly kind: "lines";
  readonly heading: string;
  /** The section of its inputs on a sheet that asks for them; the heading, without this. */
  readonly section?: string;
  /** `false` at the end of a sheet: left out of print. */
  readonly printed?: false;
  readonly cells: Readonly<Record<string, CellDeclaration>>;
}

/** Whole lines of text made by formulas, for people outside the office. */
export interface ProseBlock {
  readonly kind: "prose";
  readonly heading: string;
  /** A line that begins so is set as a heading; none is where it is absent. */
  readonly headingMark?: string;
  /** `false` at the end of a sheet: left out of print. */
  readonly printed?: false;
  readonly cells: Readonly<Record<string, CalcDeclaration>>;
}

/** Standing text, such as cautions. */
export interface TextBlock {
  readonly kind: "text";
  readonly heading: string;
  readonly paragraphs: readonly string[];
}

/** Rows of like cells. The first column heads each row. */
export interface TableBlock {
  readonly kind: "table";
  readonly name: string;
  readonly heading: string;
  /** The section of its inputs on a sheet that asks for them; the heading, without this. */
  readonly section?: string;
  /** Fixed capacity. */
  readonly rows: number;
  /** Rows that a new job record opens with, to be filled in; none unless told. */
  readonly opening?: number;
  /** Condition on a row's own inputs: the row is in use. All rows are, where it is absent. */
  readonly filled?: string;
  /** Condition that a row is worth a look, where all are calculated: the others are hidden as the bid is written. */
  readonly shown?: string;
  /** A table of the same rows, whose columns can be named as this one's own. */
  readonly beside?: string;
  /** The published rows (US units), or the office book's table that fills the `book` columns. */
  readonly data?: readonly Readonly<Record<string, InputValue>>[];
  readonly from?: string;
  /**
   * Copy only the rows of the office book whose `code` one of these names holds, or an input that
   * is `codeOf` the same table; all rows, where nothing holds its codes.
   */
  readonly usedBy?: readonly string[];
  readonly note?: string;
  /** What people call the rows, where no published text in them does; the office book names them so. */
  readonly rowNames?: readonly string[];
  /** `false` for a working list at the end of a sheet, which is left out of print. */
  readonly printed?: false;
  /** Nobody reads it on the sheet: it stands on sheet Workings as a whole. */
  readonly working?: true;
  /** On a page handed out: where its columns stand across the page. */
  readonly paper?: PaperTable;
  readonly columns: Readonly<Record<string, CellDeclaration>>;
  /** Set by the compiler: on a hidden sheet, where rows do not say what their checks do; sheet Checks does. */
  readonly unseen?: true;
  /** Set by the compiler: the sheet of each column that stands on another one than the table. */
  readonly elsewhere?: Readonly<Record<string, string>>;
}

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

/** Made by the compiler: the columns of a table that stand on another sheet, row by row. */
export interface PartBlock {
  readonly kind: "part";
  readonly heading: string;
  readonly of: TableBlock;
}

/** What stands on a sheet, from the top. */
export type Block =
  | LinesBlock
  | ProseBlock
  | TextBlock
  | TableBlock
  | PartBlock
  | ChartBlock
  | PanelBlock;

/** A worksheet, with how it is printed and found. */
export interface SheetDeclaration {
  readonly name: string;
  /** One sentence: what the sheet is for. */
  readonly purpose: string;
  readonly blocks: readonly Block[];
  /** Pages handed out: upright, on a grid of narrow columns, without the sheet's title. */
  readonly portrait?: boolean;
  /** Printed on so many upright pages, no wider than one: a form to be filled in by hand, a page handed out. */
  readonly formPages?: number;
  /** Printed for others: pages without content at its end are left out. */
  readonly handout?: boolean;
  /**
   * Made from the finished bid: its cells may read `bid_stands`, to say where it does not, and
   * errors in them are counted apart.
   */
  readonly page?: true;
  /** Its foot names the history that the figures come from: the last hash of the trail. */
  readonly namesTrail?: true;
  /**
   * Filled in, or made, once the job is decided or done: nothing on it moves a figure of the bid, keeps the bid from
   * standing or is told to a customer, and no other sheet may read it.
   */
  readonly afterwards?: true;
  /** The sheet of all checks, set by the engine: it alone may ask whether a value is in error. */
  readonly asksForErrors?: true;
  /** `false` for working lists: nothing of the sheet is printed. */
  readonly printed?: false;
  /** A count: while it is zero as the workbook is written, nothing of the sheet is printed. */
  readonly printedOnce?: string;
  /** Not among the tabs at first: for reference, and Summary tells how to show it. */
  readonly hidden?: true;
  /** The stage of the work that it belongs to: tabs of one group share a color. */
  readonly group?: string;
}

/**
 * A sheet that asks a person for inputs, wherever they are declared: those of one kind. The cells
 * move here; their names and the formulas that read them stay.
 */
export interface AskingSheet extends Omit<SheetDeclaration, "blocks"> {
  readonly asked: Asked;
  /** The headings of its sections, in the order in which a person is asked. */
  readonly sections: readonly string[];
  /** Before all sheets that calculate, unless told. */
  readonly stands?: "first" | "last";
}

/** Cells under one another, each by its name: label, value, unit. */
export const lines = (
  heading: string,
  cells: LinesBlock["cells"],
  options: Pick<LinesBlock, "section" | "printed"> = {},
): LinesBlock => Object.freeze({ kind: "lines", heading, cells, ...options });

/** Whole lines of text made by formulas, for people outside the office. */
export const prose = (
  heading: string,
  cells: ProseBlock["cells"],
  options: Pick<ProseBlock, "headingMark"> = {},
): ProseBlock => Object.freeze({ kind: "prose", heading, cells, ...options });

/** A block that is left out of print: it stands below all that is printed of its sheet. */
export const unprinted = <T extends LinesBlock | ProseBlock | TableBlock | ChartBlock>(
  block: T,
): T => ({
  ...block,
  printed: false,
});

/** Standing text under a heading, such as cautions. */
export const paragraphs = (heading: string, ...texts: string[]): TextBlock =>
  Object.freeze({ kind: "text", heading, paragraphs: texts });

/**
 * Rows of like cells. The first column heads each row.
 *
 * @param name its cells are named `name.column[row]`
 * @param options `rows`, its fixed capacity; `filled`, the condition on a row's inputs that it is in use; and more
 *
 * @example
 * import { calc, input, quantities, table } from "rillbook";
 *
 * const { text, length, area } = quantities;
 * const walls = table(
 *   "walls",
 *   "Walls",
 *   { rows: 8, filled: "wall_length>0" },
 *   {
 *     wall: input(text, "Wall", { optional: true }),
 *     wall_length: input(length, "Length", { least: 0 }),
 *     wall_height: input(length, "Height", { default: 8, least: 0 }),
 *     face: calc(area, "wall_length*wall_height", "Face"),
 *     // the row before: above.so_far; another cell of the template by its bare name
 *     so_far: calc(area, "above.so_far+face", "So far", { first: "face" }),
 *   },
 * );
 */
export const table = (
  name: string,
  heading: string,
  options: Omit<TableBlock, "kind" | "name" | "heading" | "columns" | "elsewhere" | "unseen">,
  columns: TableBlock["columns"],
): TableBlock => Object.freeze({ kind: "table", name, heading, ...options, columns });

/**
 * A worksheet.
 *
 * @param purpose one sentence, which stands under its title
 * @param blocks what stands on it, from the top
 */
export function sheet(
  name: string,
  purpose: string,
  blocks: readonly Block[],
  options: Omit<SheetDeclaration, "name" | "purpose" | "blocks" | "asksForErrors"> = {},
): SheetDeclaration {
  return Object.freeze({ name, purpose, blocks, ...options });
}
