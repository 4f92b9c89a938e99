import { RillbookError } from "../errors.js";
import { readText } from "../files.js";
import { parsedJson } from "../job/json.js";
import type { BookLayout, LayoutOf } from "../template/book-layout.js";
import type { RawCell } from "./cell.js";
import { layoutIn } from "./check.js";
import type { RawBook, RawTable } from "./raw-book.js";

/**
 * An office book from JSON: `{"name", "asOf", "about", "tables": {"items": [{...}, ...]}}`.
 * Throws RillbookError for a missing file, broken JSON or another shape.
 */
export async function rawBookFromJson(
  path: string,
  layouts: BookLayout | LayoutOf,
): Promise<RawBook> {
  const content = parsedJson(await readText(path, "office book"), path);
  if (!isObject(content) || !isObject(content.tables)) {
    throw shapeError(path, 'it must be one object with "name", "asOf" and "tables"');
  }
  const tables: Record<string, RawTable> = {};
  // the names of tables are the same in either system
  for (const { name } of layoutIn(layouts, "us")) {
    const rows = content.tables[name];
    if (rows === undefined) continue;
    if (!Array.isArray(rows) || !rows.every(isObject)) {
      throw shapeError(path, `its table "${name}" must be a list of objects`);
    }
    tables[name] = {
      rows: rows.map((cells, i) => ({ at: i + 1, cells: cells as Record<string, RawCell> })),
    };
  }
  return {
    name: content.name as RawCell,
    asOf: content.asOf as RawCell,
    about: content.about as RawCell,
    units: content.units as RawCell,
    tables,
    where: ({ name }) => `table "${name}"`,
  };
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const shapeError = (path: string, rule: string): RillbookError =>
  new RillbookError("book-shape", `${path} is not an office book: ${rule}. Correct it there.`);
