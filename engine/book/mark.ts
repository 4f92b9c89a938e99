import { createHash } from "node:crypto";
import type { BookRow } from "../template/book-layout.js";
import type { UnitSystem } from "../units/quantity.js";

/**
 * SHA-256 of what an office book says: its name, its day, its units where they are not US customary,
 * and its rows in their order. How a file spells it does not count, so the .xlsx and the .json of one
 * book have one mark.
 */
export function bookMark(
  name: string,
  asOf: string,
  tables: Readonly<Record<string, readonly BookRow[]>>,
  units: UnitSystem = "us",
): string {
  const sorted = Object.keys(tables)
    .sort()
    .map((table) => [table, (tables[table] ?? []).map(sortedRow)]);
  return createHash("sha256")
    .update(JSON.stringify([name, asOf, sorted, ...(units === "us" ? [] : [units])]))
    .digest("hex");
}

const sortedRow = (row: BookRow) =>
  Object.keys(row)
    .sort()
    .map((key) => [key, row[key]]);
