import { writtenDate } from "../job/date.js";
import type { BookLayout, BookTable } from "../template/book-layout.js";
import { addressOf, positionOf } from "../workbook/read/address.js";
import type { CellContent, SheetContent } from "../workbook/read/content.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import type { RawCell } from "./cell.js";
import type { RawBook, RawRow, RawTable } from "./check.js";

/** Days of the years 2000 to 2099: a number outside is no date that an office means. */
const dateRange = { first: 36526, last: 73050 };
const daysOf1904 = 1462;

/** The sheet that says what the book is: words in column A, values in column B. */
export const aboutSheet = "About";
export const aboutKeys = { name: "name", asOf: "as_of", about: "about" } as const;

/**
 * An office book from a workbook: a sheet for each table, its column names in row 1, then a row
 * for each. Throws WorkbookRefused for a file that cannot be read safely.
 */
export async function rawBookFromXlsx(path: string, layout: BookLayout): Promise<RawBook> {
  const wanted = [aboutSheet, ...layout.map(({ sheet }) => sheet)].map((name) =>
    name.toLowerCase(),
  );
  const content = await readWorkbookFile(path, {
    sheets: ({ name }) => wanted.includes(name.toLowerCase()),
  });
  const sheetNamed = (name: string) =>
    content.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  const shift = content.date1904 ? daysOf1904 : 0;
  const about = aboutOf(sheetNamed(aboutSheet));
  const tables: Record<string, RawTable | undefined> = {};
  for (const table of layout) {
    const sheet = sheetNamed(table.sheet);
    if (sheet !== undefined) tables[table.name] = rawTable(sheet, table, shift);
  }
  return {
    name: about.get(aboutKeys.name),
    asOf: dated(about.get(aboutKeys.asOf), shift),
    about: about.get(aboutKeys.about),
    tables,
    where: ({ sheet }) => `sheet ${sheet}`,
  };
}

function aboutOf(sheet: SheetContent | undefined): ReadonlyMap<string, RawCell> {
  const found = new Map<string, RawCell>();
  for (const [address, { value }] of sheet?.cells ?? []) {
    const position = positionOf(address);
    if (position?.column !== 1 || typeof value !== "string") continue;
    const beside = sheet?.cells.get(addressOf({ row: position.row, column: 2 }));
    found.set(value.trim().toLowerCase(), beside?.value);
  }
  return found;
}

function rawTable(sheet: SheetContent, table: BookTable, shift: number): RawTable {
  const lines = new Map<number, Map<number, CellContent>>();
  for (const [address, cell] of sheet.cells) {
    const position = positionOf(address);
    if (position === undefined || cell.value === null) continue;
    const line = lines.get(position.row) ?? new Map<number, CellContent>();
    line.set(position.column, cell);
    lines.set(position.row, line);
  }
  const header = new Map(
    [...(lines.get(1) ?? [])].map(([column, { value }]) => [
      column,
      String(value).trim().toLowerCase().replaceAll(" ", "_"),
    ]),
  );
  lines.delete(1);
  const dates = new Set(table.columns.filter(({ kind }) => kind === "date").map(({ key }) => key));
  const rows = [...lines]
    .sort(([a], [b]) => a - b)
    .map(([at, line]): RawRow => {
      const cells: Record<string, RawCell> = {};
      for (const [column, { value }] of line) {
        const key = header.get(column) ?? `column ${column} (without a heading)`;
        cells[key] = dates.has(key) ? dated(value, shift) : value;
      }
      return { at, cells };
    });
  return { rows, columns: [...header.values()] };
}

/** Workbooks hold dates as numbers of days. */
function dated(value: RawCell, shift: number): RawCell {
  if (typeof value !== "number") return value;
  const serial = value + shift;
  return serial >= dateRange.first && serial < dateRange.last ? writtenDate(serial) : value;
}
