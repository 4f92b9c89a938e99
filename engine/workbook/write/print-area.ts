import type { Row, Worksheet } from "exceljs";
import { columnLetters } from "../../template/layout.js";
import { columnWidth, labelWidth, lastColumn } from "./grid.js";

/** Points of a letter page between the margins: upright and, scaled to the width of the columns, across. */
const upright = (11 - 1.2) * 72;
const characterWidth = 5.4; // points, for the type and size of the sheets
const across =
  ((8.5 - 1.2) * 72 * (labelWidth + (lastColumn - 1) * columnWidth) * characterWidth) / (10 * 72);

/** Rows that may still be filled after writing, before the next page is counted in. */
const spareRows = 8;
const usualHeight = 15;

/**
 * Leaves out of print the pages at a sheet's end on which nothing stands: rows of the
 * capacity that this job does not use. The area ends with a page, not with the last
 * row, so that a line that an edit adds is printed too.
 */
export function setPrintArea(sheet: Worksheet, portrait: boolean): void {
  const page = portrait ? upright : across;
  const last = lastShown(sheet) + spareRows;
  let height = 0;
  let end = 0;
  for (let line = 1; line <= sheet.rowCount; line++) {
    const own = sheet.getRow(line).height ?? usualHeight;
    height += own;
    if (height > page) {
      if (line > last) break;
      height = own;
    }
    end = line;
  }
  if (end < sheet.rowCount) {
    sheet.pageSetup.printArea = `A$1:${columnLetters(portrait ? 1 : lastColumn)}$${end}`;
  }
}

function lastShown(sheet: Worksheet): number {
  let last = 1;
  sheet.eachRow((row, line) => {
    if (showsSomething(row)) last = line;
  });
  return last;
}

function showsSomething(row: Row): boolean {
  let shows = false;
  row.eachCell((cell) => {
    const value = cell.formula ? cell.result : cell.value;
    if (value !== undefined && value !== null && value !== "" && value !== 0 && value !== false) {
      shows = true;
    }
  });
  return shows;
}
