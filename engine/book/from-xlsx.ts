import { writtenDate } from "../job/date.js";
import type { BookLayout, BookTable, LayoutOf } from "../template/book-layout.js";
import { addressOf, columnLetters, positionOf } from "../workbook/read/address.js";
import type { CellContent, SheetContent } from "../workbook/read/content.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import type { RawCell } from "./cell.js";
import { layoutIn } from "./check.js";
import type { RawBook, RawRow, RawTable } from "./raw-book.js";

/** Days of the years 2000 to 2099: a number outside is no date that an office means. */
const dateRange = { first: 36526, last: 73050 };
const daysOf1904 = 1462;

/** The sheet that says what the book is: words in column A, values in column B. */
export const aboutSheet = "About";
export const aboutKeys = { name: "name", asOf: "as_of", units: "units", about: "about" } as const;

/**
 * An office book from a workbook: a sheet for each table, its column names in row 1 or below a title,
 * then a row for each. Throws WorkbookRefused for a file that cannot be read safely.
 */
export async function rawBookFromXlsx(
  path: string,
  layouts: BookLayout | LayoutOf,
): Promise<RawBook> {
  // sheets and columns are the same in either system
  const layout = layoutIn(layouts, "us");
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
    units: about.get(aboutKeys.units),
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
  const at = headerLine(lines, table);
  const header = headerOf(lines.get(at));
  for (const line of lines.keys()) if (line <= at) lines.delete(line);
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
  const letters = Object.fromEntries(
    [...header].map(([column, key]) => [key, columnLetters(column)]),
  );
  return { rows, columns: [...header.values()], letters };
}

type Line = ReadonlyMap<number, CellContent>;

/** A title may stand above the headings. */
const lastHeaderLine = 8;

/** The line of the column names: of the first ones, that which has most of them. */
function headerLine(lines: ReadonlyMap<number, Line>, { columns }: BookTable): number {
  const keys = new Set(columns.map(({ key }) => key));
  const known = (line: number) =>
    [...headerOf(lines.get(line)).values()].filter((key) => keys.has(key)).length;
  let best = 1;
  for (let line = 2; line <= lastHeaderLine; line++) if (known(line) > known(best)) best = line;
  return best;
}

/** Column names as keys: `Quoted on` is `quoted_on`. */
const headerOf = (line: Line = new Map()): Map<number, string> =>
  new Map(
    [...line].map(([column, { value }]) => [
      column,
      String(value).trim().toLowerCase().replaceAll(" ", "_"),
    ]),
  );

/** Workbooks hold dates as numbers of days. */
function dated(value: RawCell, shift: number): RawCell {
  if (typeof value !== "number") return value;
  const serial = value + shift;
  return serial >= dateRange.first && serial <= dateRange.last ? writtenDate(serial) : value;
}
