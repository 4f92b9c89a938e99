import type { BookRow, OfficeValues } from "./book-layout.js";
import type { InputValue, TableBlock } from "./declare.js";
import { rowColumn, rowNames, rulesTables } from "./office-layout.js";
import { hasOwnRows } from "./own-rows.js";

/** The rules of an office book by the name of the input they are the default of. */
export function officeRules({ tables }: OfficeValues): Map<string, InputValue> {
  const rows = Object.values(rulesTables).flatMap((name) => tables[name] ?? []);
  return new Map(
    rows.flatMap(({ rule, value }) =>
      value === undefined ? [] : [[String(rule), value] as const],
    ),
  );
}

/**
 * The rows of an office book for a table of the bid, in the order of its rows; undefined where the book
 * does not have the table, and for a row that it lacks.
 */
export function officeRowsOf(
  block: TableBlock,
  { tables }: OfficeValues,
): readonly (BookRow | undefined)[] | undefined {
  const given = tables[block.name];
  if (given === undefined || block.from !== undefined) return undefined;
  if (hasOwnRows(block)) return given;
  const byName = new Map(given.map((row) => [nameIn(row), row]));
  return rowNames(block).map((name) => byName.get(name.toLowerCase()));
}

const nameIn = (row: BookRow): string => String(row[rowColumn] ?? "").toLowerCase();
