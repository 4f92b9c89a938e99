import exceljs from "exceljs";
import { serialOf } from "../job/date.js";
import { bookProperty } from "../output/kind.js";
import type { BookLayout } from "../template/book-layout.js";
import { styles } from "../workbook/write/look.js";
import { finishPackage } from "../workbook/write/package.js";
import { aboutKeys, aboutSheet } from "./from-xlsx.js";
import type { OfficeBook } from "./office-book.js";
import { writeTable } from "./write-table.js";

/** No clock time: the same book must give the same bytes. */
const undated = new Date(Date.UTC(2000, 0, 1));

type Written = Pick<OfficeBook, "name" | "asOf" | "about" | "units" | "tables">;

/**
 * Writes an office book as an .xlsx for the office to keep: what it is on the sheet About, then a sheet
 * for each table with what its columns mean as notes, validation, and a frozen header.
 */
export async function writeOfficeBook(book: Written, layout: BookLayout): Promise<Uint8Array> {
  const workbook = new exceljs.Workbook();
  workbook.created = undated;
  workbook.modified = undated;
  writeAbout(workbook, book, layout);
  for (const table of layout) writeTable(workbook, table, book.tables[table.name] ?? []);
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
  return finishPackage(bytes, { [bookProperty]: "office book" });
}

type Line = readonly [key: string, value: string | number, numFmt: string];

function writeAbout(workbook: exceljs.Workbook, book: Written, layout: BookLayout): void {
  const { name, asOf, about, units = "us" } = book;
  const sheet = workbook.addWorksheet(aboutSheet);
  sheet.views = [{ showGridLines: false }];
  sheet.pageSetup = { orientation: "portrait", fitToPage: true, fitToWidth: 1, fitToHeight: 0 };
  sheet.getColumn(1).width = 24;
  sheet.getColumn(2).width = 76;
  const put = (line: number, column: number, value: string | number, style: object) => {
    const cell = sheet.getCell(line, column);
    cell.value = value;
    cell.style = { ...style };
  };
  put(1, 1, "Office book", styles.title);
  const purpose =
    "What holds for every job. Tinted cells are the office's own; jobs take their defaults from here.";
  put(2, 1, purpose, styles.purpose);
  const lines: Line[] = [
    [aboutKeys.name, name, "@"],
    [aboutKeys.asOf, serialOf(asOf) ?? asOf, "yyyy-mm-dd"],
    [aboutKeys.units, units, "@"],
    [aboutKeys.about, about ?? "", "@"],
  ];
  lines.forEach(([key, value, numFmt], i) => {
    put(4 + i, 1, key, styles.label);
    const alignment = { wrapText: true, vertical: "top", horizontal: "left" };
    put(4 + i, 2, value, { ...styles.input, numFmt, alignment });
  });
  sheet.getCell(6, 2).dataValidation = { type: "list", allowBlank: false, formulae: ['"us,si"'] };
  sheet.getRow(7).height = 60;
  put(9, 1, "Sheets", styles.heading);
  put(9, 2, "", styles.heading);
  layout.forEach(({ sheet: title, means }, i) => {
    put(10 + i, 1, title, styles.label);
    put(10 + i, 2, means, styles.note);
    sheet.getRow(10 + i).height = 13 * Math.ceil((means.length + 1) / 88) + 2;
  });
}
