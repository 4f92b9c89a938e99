import type exceljs from "exceljs";
import { columnLetters } from "../address.js";
import { serialOf } from "../job/date.js";
import type { BookColumn, BookRow, BookTable } from "../template/book-layout.js";
import { attention, styles } from "../workbook/write/look.js";
import { formatOf, validationOf } from "./cell-format.js";

/** The line of the column headings: title and purpose stand above. */
const headerLine = 4;
/** Rows beyond those filled that carry validation and formats, where the office adds its own. */
const spareRows = 40;

/** Writes the sheet of one table: title, purpose, headings with notes, rows, and some to be filled in. */
export function writeTable(
  workbook: exceljs.Workbook,
  table: BookTable,
  rows: readonly BookRow[],
): void {
  const sheet = workbook.addWorksheet(table.sheet);
  sheet.views = [{ state: "frozen", xSplit: 1, ySplit: headerLine, showGridLines: false }];
  sheet.pageSetup = {
    orientation: "landscape",
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
    printTitlesRow: `${headerLine}:${headerLine}`,
  };
  sheet.headerFooter = { oddFooter: `&L&8${table.sheet}&R&8Page &P of &N` };
  put(sheet, 1, 1, table.sheet, styles.title);
  put(sheet, 2, 1, table.means, styles.purpose);
  table.columns.forEach((column, i) => {
    header(sheet, column, i + 1);
  });
  const last = writeRows(sheet, table, rows);
  mark(sheet, table, last);
}

function header(sheet: exceljs.Worksheet, column: BookColumn, at: number): void {
  put(sheet, headerLine, at, titled(column.key), styles.header);
  sheet.getCell(headerLine, at).note = column.required ? `${column.means} Needed.` : column.means;
  sheet.getColumn(at).width = widthOf(column);
}

/** `Quoted on`: read again without regard to case and spaces. */
const titled = (key: string): string => {
  const words = key.replaceAll("_", " ");
  return words.slice(0, 1).toUpperCase() + words.slice(1);
};

/** Gives the last line that carries formats. */
function writeRows(sheet: exceljs.Worksheet, table: BookTable, rows: readonly BookRow[]): number {
  let line = headerLine;
  let group: string | undefined;
  for (const row of rows) {
    const own = table.groups?.get(String(row.rule));
    if (own !== undefined && own !== group) {
      line += 1;
      table.columns.forEach((_, i) => {
        put(sheet, line, i + 1, i === 0 ? own : null, styles.heading);
      });
      group = own;
    }
    line += 1;
    writeRow(sheet, table, row, line);
  }
  const spare = table.rules !== undefined || table.fixed ? 0 : spareRows;
  for (let i = 0; i < spare; i++) writeRow(sheet, table, {}, line + 1 + i);
  return line + spare;
}

function writeRow(sheet: exceljs.Worksheet, table: BookTable, row: BookRow, line: number): void {
  table.columns.forEach((declared, i) => {
    const rule = declared.key === "value" ? table.rules?.get(String(row.rule)) : undefined;
    const column = rule ?? declared;
    const value = row[column.key];
    const numFmt = formatOf(column);
    const named = table.key?.includes(column.key) && table.key[0] !== "code";
    const style =
      column.guide || named ? styles.note : { ...styles.input, alignment: alignmentOf(column) };
    put(sheet, line, i + 1, value === undefined ? null : cellValue(column, value), {
      ...style,
      numFmt,
    });
    const validation = column.guide || named ? undefined : validationOf(column);
    if (validation !== undefined) sheet.getCell(line, i + 1).dataValidation = validation;
  });
  sheet.getRow(line).height = heightOf(table, row);
}

/** Rows whose values still stand in for the office's own. */
function mark(sheet: exceljs.Worksheet, { columns }: BookTable, last: number): void {
  const at = columns.findIndex(({ key }) => key === "placeholder") + 1;
  if (at === 0 || last <= headerLine) return;
  const letter = columnLetters(at);
  const first = headerLine + 1;
  sheet.addConditionalFormatting({
    ref: `${letter}${first}:${letter}${last}`,
    rules: [attention(`${letter}${first}="yes"`)],
  });
}

function cellValue({ kind }: BookColumn, value: string | number | boolean): string | number {
  if (kind === "date") return serialOf(String(value)) ?? String(value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  return value;
}

const alignmentOf = ({ kind }: BookColumn) =>
  ({
    ...(kind === "number" || kind === "date" ? { indent: 1 } : {}),
    vertical: "top",
    horizontal: kind === "number" || kind === "date" ? "right" : "left",
    wrapText: kind === "text",
  }) as const;

const wide = new Set(["description", "source", "meaning", "note", "row"]);

const widthOf = ({ key, kind, guide }: BookColumn): number => {
  if (key === "note") return 60;
  if (key === "unit" || key === "placeholder") return 12;
  if (key === "value") return 30;
  if (key === "meaning") return 34;
  if (wide.has(key)) return 42;
  return guide ? 22 : { code: 24, text: 20, number: 12, date: 13, yesno: 12 }[kind];
};

/** Wrapped texts need their lines. */
function heightOf({ columns }: BookTable, row: BookRow): number {
  const lines = columns.map((column) => {
    const value = row[column.key];
    return typeof value === "string" ? Math.ceil(value.length / (widthOf(column) * 1.05)) : 1;
  });
  return 13.5 * Math.max(1, ...lines) + 1.5;
}

function put(
  sheet: exceljs.Worksheet,
  line: number,
  column: number,
  value: string | number | null,
  style: object,
): void {
  const cell = sheet.getCell(line, column);
  cell.value = value;
  cell.style = { ...style };
}
