import type { Value } from "../../formula/value.js";
import type { Content, Look, Sheet } from "./book/sheet.js";
import { formulaContent } from "./cells.js";
import { styles } from "./look.js";

/** Equal columns, so that figures stand in two halves and links in rows of six. */
export const gridColumns = 12;
const gridWidth = 11;
export const gridWidths: readonly number[] = Array.from({ length: gridColumns }, () => gridWidth);

/** Letters that fit over so many columns. */
export const lettersOver = (columns: number): number => columns * gridWidth * 1.08;

/** A sheet of equal columns, written from the top down. */
export class SummaryGrid {
  line = 1;

  constructor(readonly sheet: Sheet) {
    gridWidths.forEach((width, i) => {
      sheet.widths[i + 1] = width;
    });
  }

  /** A value over so many columns from one on. */
  put(column: number, over: number, value: Content, style: Look): void {
    if (over > 1) this.sheet.mergeCells(this.line, column, this.line, column + over - 1);
    const cell = this.sheet.getCell(this.line, column);
    cell.value = value;
    cell.style = style;
  }

  formula(column: number, over: number, formula: string, value: Value, style: Look): void {
    this.put(column, over, formulaContent(formula, value), style);
  }

  heading(text: string): void {
    for (let column = 1; column <= gridColumns; column++) {
      this.sheet.getCell(this.line, column).style = styles.heading;
    }
    this.sheet.getCell(this.line, 1).value = text;
    this.line += 1;
  }

  height(points: number): void {
    this.sheet.getRow(this.line).height = points;
  }
}
