import { Cone, Reach } from "../evaluate/cone.js";
import type { Value } from "../formula/value.js";
import { placeholderColumn } from "../template/book-layout.js";
import type { Cell, Model, Table } from "../template/model.js";
import { codeOf } from "./fill.js";

/** A row of the office book that stands in a job and is marked as a placeholder. */
export interface UsedRow {
  /** The table of the office book, and the row's code as look-ups take it. */
  readonly from: string;
  readonly code: string;
}

/**
 * The rows of the office book marked as placeholders that a job counts as such: those of which clearing the
 * mark changes a figure of the job. What is copied along and not used changes none.
 *
 * @param values of the calculated job
 */
export function placeholdersUsed(model: Model, values: readonly Value[]): UsedRow[] {
  const marked = [...model.tables.values()].flatMap((table) => marksOf(table, values));
  if (marked.length === 0) return [];
  const changing = new Set(marked.map(({ mark }) => mark.index));
  const reached = new Cone(
    model,
    model.order.map(({ id }) => id),
    changing,
  );
  const figures = reached.cells.filter(
    ({ declaration: { quantity } }) => quantity.kind === "number" || quantity.kind === "yesno",
  );
  const reach = new Reach(
    model,
    values,
    figures.map(({ id }) => id),
    reached,
  );
  const changes = (mark: Cell): boolean =>
    reach
      .under([[mark.index, false]])
      .some((value, i) => value !== values[figures[i]?.index as number]);
  return marked.filter(({ mark }) => changes(mark)).map(({ from, code }) => ({ from, code }));
}

/** The rows of a copied table that carry the mark. */
function marksOf({ block, columns }: Table, values: readonly Value[]) {
  const { from } = block;
  const marks = columns.get(placeholderColumn.key)?.cells ?? [];
  const codes = columns.get("code")?.cells ?? [];
  if (from === undefined) return [];
  return marks.flatMap((mark, i) => {
    const code = codeOf(values[codes[i]?.index as number] ?? null);
    return values[mark.index] === true && code !== "" ? [{ from, code, mark }] : [];
  });
}
