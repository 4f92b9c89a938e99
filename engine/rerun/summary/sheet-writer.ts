import type exceljs from "exceljs";
import type { CellValue, Style } from "exceljs";
import { columnLetters } from "../../address.js";
import type { Value } from "../../formula/value.js";
import { styles } from "../../workbook/write/look.js";

export type ExcelWriter = exceljs.stream.xlsx.WorkbookWriter;

/** What a cell of a summary holds: a value, or a formula with its value. */
export type Content = Value | { readonly formula: string; readonly result: number | string };

export interface Heading {
  readonly label: string;
  readonly width: number;
  readonly format?: string;
}

export const dollars = '"$"#,##0.00';
export const share = "0.0%";

/** Title, purpose, a blank line, headings: the rows begin below. */
export const firstRow = 5;

/** A worksheet of at most so many rows; the format ends at 1,048,576. */
const mostRows = 1_000_000;

export function lettersOf(headings: readonly Heading[], label: string): string {
  return columnLetters(headings.findIndex((one) => one.label === label) + 1);
}

/** The range of a list's column over its rows, at least one: `'Jobs'!$H$5:$H$104`. */
export function rangeOf(
  sheet: string,
  headings: readonly Heading[],
  label: string,
  rows: number,
): string {
  const letters = lettersOf(headings, label);
  const last = firstRow + Math.max(Math.min(rows, mostRows), 1) - 1;
  return `'${sheet}'!$${letters}$${firstRow}:$${letters}$${last}`;
}

/** A list on a worksheet of its own, written row by row and not held. */
export class SheetWriter {
  readonly #sheet: exceljs.Worksheet;
  /** The look of numbers in each column, made once: exceljs knows again what is the same object. */
  readonly #numeric: readonly Partial<Style>[];
  #rows = 0;
  #left = 0;

  constructor(
    book: ExcelWriter,
    readonly name: string,
    purpose: string,
    readonly headings: readonly Heading[],
  ) {
    this.#sheet = book.addWorksheet(name, {
      views: [{ state: "frozen", ySplit: firstRow - 1, xSplit: 1, showGridLines: false }],
      pageSetup: { orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
    });
    headings.forEach(({ width }, i) => {
      this.#sheet.getColumn(i + 1).width = width;
    });
    this.#numeric = headings.map(({ format }) =>
      format === undefined ? styles.plain : { ...styles.plain, numFmt: format },
    );
    this.line(1, [name], [styles.title]);
    this.line(2, [purpose], [styles.purpose]);
    this.line(3, [], []);
    const labels = headings.map(({ label }) => label);
    this.line(
      firstRow - 1,
      labels,
      labels.map(() => styles.header),
    );
  }

  /** The worksheet row that comes next. */
  get next(): number {
    return firstRow + this.#rows;
  }

  letters(label: string): string {
    return lettersOf(this.headings, label);
  }

  add(contents: readonly Content[]): void {
    if (this.#rows >= mostRows) {
      this.#left += 1;
      return;
    }
    const looks = contents.map((content, i) => {
      const isNumeric =
        typeof content === "number" || (typeof content === "object" && content !== null);
      return isNumeric ? (this.#numeric[i] as Partial<Style>) : styles.plain;
    });
    this.line(this.next, contents, looks);
    this.#rows += 1;
  }

  /** A heading among the rows. */
  heading(label: string): void {
    this.line(this.next, [label], [styles.heading]);
    this.skip();
  }

  /** Counts a row that `line` has written. */
  skip(): void {
    this.#rows += 1;
  }

  /** Ends the sheet, and says so where it could not hold everything. */
  end(filtered = true): void {
    if (this.#left > 0) {
      this.line(this.next, [`and ${this.#left} more: see the result lines`], [styles.strongLabel]);
    }
    if (filtered && this.#rows > 0) {
      const last = columnLetters(this.headings.length);
      this.#sheet.autoFilter = `A${firstRow - 1}:${last}${this.next - 1}`;
    }
    this.#sheet.commit();
  }

  /** A line of any content. */
  line(at: number, contents: readonly Content[], looks: readonly Partial<Style>[]): void {
    const row = this.#sheet.getRow(at);
    contents.forEach((content, i) => {
      const cell = row.getCell(i + 1);
      cell.value = content as CellValue;
      cell.style = looks[i] ?? styles.plain;
    });
    row.commit();
  }
}
