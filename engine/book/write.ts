import exceljs from "exceljs";
import { serialOf } from "../job/date.js";
import { bookProperty } from "../output/kind.js";
import type { BookColumn, BookLayout, BookTable } from "../template/book-layout.js";
import { finishPackage } from "../workbook/write/package.js";
import { aboutKeys, aboutSheet } from "./from-xlsx.js";
import type { OfficeBook } from "./office-book.js";

/** No clock time: the same book must give the same bytes. */
const undated = new Date(Date.UTC(2000, 0, 1));
const font = { name: "Liberation Sans", size: 10 };
const onePageWide = {
  orientation: "landscape",
  fitToPage: true,
  fitToWidth: 1,
  fitToHeight: 0,
} as const;
/** Rows, beyond those filled, that carry validation and formats. */
const spareRows = 200;

/**
 * Writes an office book as an .xlsx for the office to keep: a sheet for each table with column
 * names in a frozen first row, what each means as a note, and validation below.
 */
export async function writeOfficeBook(
  book: Pick<OfficeBook, "name" | "asOf" | "about" | "tables">,
  layout: BookLayout,
): Promise<Uint8Array> {
  const workbook = new exceljs.Workbook();
  workbook.created = undated;
  workbook.modified = undated;
  writeAbout(workbook, book, layout);
  for (const table of layout) writeTable(workbook, table, book.tables[table.name] ?? []);
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
  return finishPackage(bytes, { [bookProperty]: "office book" });
}

function writeAbout(
  workbook: exceljs.Workbook,
  { name, asOf, about }: Pick<OfficeBook, "name" | "asOf" | "about">,
  layout: BookLayout,
): void {
  const sheet = workbook.addWorksheet(aboutSheet);
  sheet.pageSetup = onePageWide;
  sheet.getColumn(1).width = 16;
  sheet.getColumn(2).width = 90;
  const serial = serialOf(asOf);
  const lines: [string, string | number, string][] = [
    [aboutKeys.name, name, "@"],
    [aboutKeys.asOf, serial ?? asOf, "yyyy-mm-dd"],
    [aboutKeys.about, about ?? "", "@"],
    ...layout.map(({ sheet: title, means }): [string, string, string] => [title, means, "@"]),
  ];
  lines.forEach(([key, value, numFmt], i) => {
    const [label, cell] = [sheet.getCell(i + 1, 1), sheet.getCell(i + 1, 2)];
    label.value = key;
    label.style = { font: { ...font, bold: true }, alignment: { vertical: "top" } };
    cell.value = value;
    cell.style = {
      font,
      numFmt,
      alignment: { wrapText: true, vertical: "top", horizontal: "left" },
    };
  });
}

function writeTable(
  workbook: exceljs.Workbook,
  table: BookTable,
  rows: OfficeBook["tables"][string],
): void {
  const sheet = workbook.addWorksheet(table.sheet);
  sheet.views = [{ state: "frozen", xSplit: 1, ySplit: 1 }];
  sheet.pageSetup = onePageWide;
  table.columns.forEach((column, i) => {
    const header = sheet.getCell(1, i + 1);
    header.value = column.key;
    header.note = column.required ? `${column.means} Needed.` : column.means;
    header.style = {
      font: { ...font, bold: true },
      border: { bottom: { style: "medium", color: { argb: "FF2F5D62" } } },
    };
    sheet.getColumn(i + 1).width = widthOf(column);
    for (let row = 0; row < rows.length + spareRows; row++) {
      const cell = sheet.getCell(row + 2, i + 1);
      const value = rows[row]?.[column.key];
      if (value !== undefined) cell.value = cellValue(column, value);
      cell.style = { font, numFmt: formatOf(column) };
      const validation = validationOf(column);
      if (validation !== undefined) cell.dataValidation = validation;
    }
  });
}

function cellValue({ kind }: BookColumn, value: string | number | boolean): string | number {
  if (kind === "date") return serialOf(String(value)) ?? String(value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  return value;
}

function widthOf({ key, kind }: BookColumn): number {
  if (key === "description" || key === "source") return 46;
  return { code: 22, text: 22, number: 12, date: 13, yesno: 12 }[kind];
}

const formatOf = ({ kind }: BookColumn): string =>
  ({ code: "@", text: "@", number: "General", date: "yyyy-mm-dd", yesno: "@" })[kind];

/** A list in a validation has at most 255 characters. */
const longestList = 255;

function validationOf(column: BookColumn): exceljs.DataValidation | undefined {
  const choices = column.kind === "yesno" ? ["yes", "no"] : column.choices;
  const told = { showErrorMessage: true, errorTitle: column.key, error: column.means };
  if (choices !== undefined && choices.join(",").length <= longestList) {
    return { type: "list", allowBlank: true, formulae: [`"${choices.join(",")}"`], ...told };
  }
  if (column.kind === "number") {
    const { least = -1e9, most = 1e9 } = column;
    const formulae = [least, most];
    return { type: "decimal", operator: "between", allowBlank: true, formulae, ...told };
  }
  return undefined;
}
