import type { CellContent } from "../read/content.js";

/** Where a cell of the model stands in a workbook. */
export interface MatchedCell {
  readonly sheet: string;
  /** `B12`. */
  readonly address: string;
  /** A blank cell has the value null. */
  readonly cell: CellContent;
}

/** A cell of the model that the workbook no longer has. */
export interface MissingCell {
  readonly id: string;
  /** The defined name, or the implied cell's own. */
  readonly name: string;
  /** A sentence part: `its name is missing`. */
  readonly reason: string;
}

/** A cell that stands elsewhere than the template puts it. */
export interface MovedCell {
  readonly id: string;
  /** `Sizes!B12`, by the template. */
  readonly from: string;
  readonly to: string;
}

/** A name that points away from the cells it stood among: cut and pasted, or pointed elsewhere. */
export interface StrayName {
  readonly name: string;
  readonly to: string;
  /** Where a single cell stands by the cells around it; absent for columns, and where these do not say. */
  readonly home?: { readonly sheet: string; readonly address: string };
}

/** A worksheet line within a table that the template does not know. */
export interface InsertedRow {
  readonly table: string;
  readonly sheet: string;
  readonly line: number;
  /** It stands below this row of the table. */
  readonly after: number;
  /** What stands in it, by column (`runs.length`). Empty for a blank line. */
  readonly filled: ReadonlyMap<string, CellContent>;
}

/** The cells of a model, found in a workbook. */
export interface WorkbookMatch {
  readonly at: ReadonlyMap<string, MatchedCell>;
  readonly missing: readonly MissingCell[];
  readonly moved: readonly MovedCell[];
  readonly stray: readonly StrayName[];
  readonly inserted: readonly InsertedRow[];
  /** Names of the template that a sheet has for itself as well: its formulas read those. */
  readonly shadowed: readonly { readonly name: string; readonly sheet: string }[];
  /** The model's sheets, by name, under the name they have in the workbook. */
  readonly sheets: ReadonlyMap<string, string>;
}
