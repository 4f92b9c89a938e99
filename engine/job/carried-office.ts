import { bookCopyOf } from "../template/book-copy.js";
import type { BookRow, OfficeValues } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import type { Model } from "../template/model.js";
import { rowColumn, rowNames, rulesTables } from "../template/office-layout.js";
import { inputPlanOf } from "./input-plan.js";

/**
 * What the office book said when a bid was written, from the cells of the bid that tell it.
 *
 * @param held the value of such a cell by its id, as it is recorded; null where it is blank
 */
export function carriedOffice(
  model: Model,
  held: (id: string) => InputValue | null | undefined,
): OfficeValues {
  const rules: BookRow[] = [];
  const rows = new Map<string, Record<string, InputValue>[]>();
  for (const { cell, table, key = "" } of inputPlanOf(model).inputs) {
    const copy = bookCopyOf(model, cell);
    if (copy === undefined) continue;
    const value = held(copy.id) ?? undefined;
    if (table === undefined) {
      if (value !== undefined) rules.push({ rule: cell.name, value });
      continue;
    }
    const own = rows.get(table) ?? [];
    rows.set(table, own);
    const at = (cell.row ?? 1) - 1;
    own[at] = { ...own[at], ...(value === undefined ? {} : { [key]: value }) };
  }
  const tables: Record<string, readonly BookRow[]> = { [rulesTables.rules]: rules };
  for (const [table, own] of rows) tables[table] = namedRows(model, table, own);
  return { units: model.system, tables };
}

/** Rows that the template fixes by their names; rows of the office's own up to the last that says something. */
function namedRows(model: Model, table: string, rows: readonly BookRow[]): readonly BookRow[] {
  const block = model.tables.get(table)?.block;
  const fixed = inputPlanOf(model).inputs.some((one) => one.table === table && !one.ownRows);
  if (block === undefined || !fixed) {
    return rows.slice(0, rows.findLastIndex((row) => Object.keys(row).length > 0) + 1);
  }
  const names = rowNames(block);
  return rows.map((row, i) => ({ [rowColumn]: names[i] ?? String(i + 1), ...row }));
}
