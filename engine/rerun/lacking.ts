import { carriedCodes, codeOf, fillBook, fittedTables } from "../book/fill.js";
import type { OfficeBook } from "../book/office-book.js";
import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";

/** The codes that a job uses and an office book has no row for, as the job writes them. */
export function lackingCodes(model: Model, values: readonly Value[], book: OfficeBook): string[] {
  const lacking = fittedTables(model, book).flatMap((table) => {
    const known = new Set(table.rows.map(({ code }) => code));
    return carriedCodes(table, values).filter((code) => !known.has(codeOf(code)));
  });
  return [...new Set(lacking)];
}

/**
 * The values of a job under an office book to which the rows that it lacks come from another one:
 * what differs then is due to the missing rows. Undefined where the other book lacks them too.
 */
export function withRowsOf(
  model: Model,
  values: readonly Value[],
  book: OfficeBook,
  other: OfficeBook,
): Value[] | undefined {
  const joined = {
    ...book,
    tables: { ...book.tables } as Record<string, OfficeBook["tables"][string]>,
  };
  for (const { from, usedBy } of fittedTables(model, book)) {
    const rows = book.tables[from] ?? [];
    // a table that is copied whole has its place counted
    if (usedBy === undefined) continue;
    const known = new Set(rows.map(({ code }) => codeOf(code ?? null)));
    const more = (other.tables[from] ?? []).filter(({ code }) => !known.has(codeOf(code ?? null)));
    joined.tables[from] = [...rows, ...more];
  }
  if (lackingCodes(model, values, joined).length > 0) return undefined;
  const filled = [...values];
  fillBook(model, filled, joined);
  return filled;
}

const mostCodes = 8;

/** `board, paint and 3 more`. */
export function someCodes(codes: readonly string[]): string {
  const more = codes.length - mostCodes;
  return `${codes.slice(0, mostCodes).join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}
