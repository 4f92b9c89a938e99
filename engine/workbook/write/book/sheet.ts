import type { ConditionalFormattingRule, DataValidation, Style } from "exceljs";
import { addressOf } from "../../../address.js";

/** A formula with the value that a program shows before it calculates. */
export interface Formula {
  readonly formula: string;
  readonly result: string | number | boolean | { readonly error: string };
}

/** What a cell holds. */
export type Content = null | string | number | boolean | Formula;

/** Styles are shared between cells, and never changed: a cell is given another one. */
export type Look = Readonly<Partial<Style>>;

const plain: Look = {};

/** A cell of a sheet; one that a merged place covers has that place's first cell as its master. */
export class SheetCell {
  value: Content = null;
  style: Look = plain;
  note: string | undefined = undefined;
  master: SheetCell | undefined = undefined;

  constructor(
    readonly line: number,
    readonly column: number,
  ) {}

  get address(): string {
    return addressOf(this.column, this.line);
  }

  /** What shows in its place. */
  get shown(): Content {
    return this.master === undefined ? this.value : this.master.value;
  }
}

/** A line of a sheet, with its cells by column, from 1. */
export class Row {
  readonly cells: (SheetCell | undefined)[] = [];
  /** Points; a program's own height where none is given. */
  height: number | undefined = undefined;
  hidden = false;

  constructor(
    private readonly sheet: Sheet,
    readonly line: number,
  ) {}

  /** The page ends below this line. */
  addPageBreak(): void {
    this.sheet.pageBreaks.push(this.line);
  }
}

/** A stretch of cells shown as one. */
export interface Merge {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** How a sheet is put on paper (ISO/IEC 29500-1, 18.3.1.63). */
export interface PageSetup {
  orientation: "portrait" | "landscape";
  fitToPage?: boolean;
  fitToWidth?: number;
  fitToHeight?: number;
  scale?: number;
  firstPageNumber?: number;
  /** In the middle of the page's width. */
  centered?: boolean;
  /** Inches. */
  margins?: Readonly<Record<"left" | "right" | "top" | "bottom" | "header" | "footer", number>>;
  /** `A$1:H$60`. */
  printArea?: string;
  /** `4:5`, lines that stand again on each page. */
  printTitlesRow?: string;
}

/** What of a sheet stays in sight as one scrolls, and whether its grid shows. */
export interface View {
  readonly frozenLines?: number;
  readonly showGridLines?: false;
}

/** Rules for the look of an area. */
export interface Conditional {
  readonly ref: string;
  readonly rules: readonly ConditionalFormattingRule[];
}

/** How a new sheet stands in the book. */
export interface SheetOptions {
  readonly hidden?: boolean;
  /** Points of a line where none is given. */
  readonly defaultRowHeight?: number;
  readonly tabColor?: string;
  readonly view?: View;
}

/** A sheet as it is laid out, before it is spelled as XML: lines and columns count from 1. */
export class Sheet {
  readonly rows: (Row | undefined)[] = [];
  /** Digits, by column from 1; none where a program's own width does. */
  readonly widths: (number | undefined)[] = [];
  readonly merges: Merge[] = [];
  readonly pageBreaks: number[] = [];
  readonly conditionals: Conditional[] = [];
  readonly validations = new Map<string, DataValidation>();
  pageSetup: PageSetup = { orientation: "portrait" };
  footer: string | undefined = undefined;
  view: View | undefined;

  constructor(
    readonly name: string,
    readonly options: SheetOptions = {},
  ) {
    this.view = options.view;
  }

  getRow(line: number): Row {
    const known = this.rows[line];
    if (known !== undefined) return known;
    const row = new Row(this, line);
    this.rows[line] = row;
    return row;
  }

  getCell(line: number, column: number): SheetCell {
    const { cells } = this.getRow(line);
    const known = cells[column];
    if (known !== undefined) return known;
    const cell = new SheetCell(line, column);
    cells[column] = cell;
    return cell;
  }

  /** Makes one place of a stretch of cells; those that it covers look as the first one does now. */
  mergeCells(top: number, left: number, bottom: number, right: number): void {
    const master = this.getCell(top, left);
    for (let line = top; line <= bottom; line++) {
      for (let column = left; column <= right; column++) {
        const cell = this.getCell(line, column);
        if (cell.master !== undefined) throw new Error(`${this.name}: ${cell.address} is merged.`);
        if (cell === master) continue;
        cell.master = master;
        cell.value = null;
        cell.style = master.style;
      }
    }
    this.merges.push({ top, left, bottom, right });
  }

  addConditionalFormatting(rules: Conditional): void {
    this.conditionals.push(rules);
  }

  /** The last line that was touched. */
  get rowCount(): number {
    return this.rows.length - 1;
  }

  /** The last column of those lines in which something stands. */
  get columnCount(): number {
    let last = 0;
    for (const row of this.filledRows()) last = Math.max(last, row.cells.length - 1);
    return last;
  }

  /** The lines in which something stands, from the top down. */
  *filledRows(): Generator<Row> {
    for (const row of this.rows) {
      if (row?.cells.some((cell) => cell !== undefined && isFilled(cell))) yield row;
    }
  }
}

/** Has a cell a value, or is it part of a merged place? */
export const isFilled = ({ value, master }: SheetCell): boolean =>
  value !== null || master !== undefined;
