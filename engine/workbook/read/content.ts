import type { Position } from "./address.js";
import type { SheetLook, WorkbookLook } from "./look/content.js";

/** What a workbook says; how it looks too, where that was asked for. */
export interface WorkbookContent {
  /** In the order of the tabs. */
  readonly sheets: readonly SheetContent[];
  readonly names: readonly DefinedName[];
  /** Those that hold for the whole workbook. Workbooks that were read together and have the same ones share the list. */
  readonly common: readonly DefinedName[];
  readonly properties: DocumentProperties;
  readonly partNames: readonly string[];
  /** True when dates count from 1904: each serial number is then 1,462 lower than usual. */
  readonly date1904: boolean;
  readonly look?: WorkbookLook;
}

export interface SheetContent {
  readonly name: string;
  readonly state: SheetState;
  /** False for a sheet that was left out by `ReadOptions.sheets`, and for a chart sheet. */
  readonly read: boolean;
  readonly hiddenRows: number;
  readonly hiddenColumns: number;
  /** The cells whose input the program checks by a rule (data validation). */
  readonly validated: ReadonlySet<string>;
  /** Filled cells by address ("B12"). A cell that has only a style is not among them. */
  readonly cells: ReadonlyMap<string, CellContent>;
  readonly look?: SheetLook;
}

export type SheetState = "visible" | "hidden" | "veryHidden";

export interface CellContent {
  /** The value, or the cached result of the formula. Dates are serial numbers. */
  readonly value: CellValue;
  /** Without "="; written out in full where the file shares one formula among cells. */
  readonly formula?: string;
  /** The rectangle that an array formula fills. */
  readonly array?: string;
  /** The number of its style, where the look was asked for. */
  readonly style?: number;
  /** A part of its text is set apart: tiny, pale, struck or raised. */
  readonly uneven?: true;
}

export type CellValue = number | string | boolean | { readonly error: string } | null;

export interface DefinedName {
  readonly name: string;
  /** The definition as written. */
  readonly text: string;
  /** Where it points, when that is one fixed cell or rectangle of a sheet of this workbook. */
  readonly target: Target | undefined;
  /** The sheet on which alone the name holds; undefined for the whole workbook. */
  readonly scope: string | undefined;
  readonly hidden: boolean;
}

export interface Target {
  readonly sheet: string;
  readonly from: Position;
  readonly to: Position;
}

export interface DocumentProperties {
  readonly custom: ReadonlyMap<string, string>;
  readonly creator?: string;
  readonly lastModifiedBy?: string;
  /** As written: date and time of ISO 8601. */
  readonly created?: string;
  readonly modified?: string;
}
