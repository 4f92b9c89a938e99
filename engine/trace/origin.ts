import type { Value } from "../formula/value.js";
import { writtenDate } from "../job/date.js";
import type { Cell, Model } from "../template/model.js";
import type { Origin } from "./node.js";

/** What is known of a job besides its values. */
export interface Origins {
  /** Where an input's value comes from; asked for inputs only. */
  readonly input: (cell: Cell) => Origin;
  /** The office book, as `name, as of date`. */
  readonly book: string;
}

/** The origin of a cell that has no formula. */
export function originOf(
  model: Model,
  cell: Cell,
  values: readonly Value[],
  origins: Origins,
): Origin | undefined {
  switch (cell.declaration.kind) {
    case "input":
      return origins.input(cell);
    case "published":
      return {
        kind: "published",
        text: `published: ${cell.declaration.source ?? "no source stated"}`,
      };
    case "book":
      return { kind: "office book", text: bookOrigin(model, cell, values, origins.book) };
    default:
      return undefined;
  }
}

/** `office book "2026", as of 2026-03-01: code post, supplier Supplier A, good until 2026-12-31`. */
function bookOrigin(model: Model, cell: Cell, values: readonly Value[], book: string): string {
  const row = [...(model.tables.get(cell.table ?? "")?.columns.values() ?? [])]
    .filter(({ declaration: { kind, quantity } }) => {
      return kind === "book" && (quantity.kind === "text" || quantity.kind === "date");
    })
    .map(({ key, cells, declaration }) => {
      const value = values[(cells[(cell.row ?? 1) - 1] as Cell).index];
      if (value === null || value === undefined || value === "") return "";
      const isDate = declaration.quantity.kind === "date" && typeof value === "number";
      return `${key.replaceAll("_", " ")} ${isDate ? writtenDate(value) : String(value)}`;
    })
    .filter((part) => part !== "");
  return `office book ${book}${row.length === 0 ? "" : `: ${row.join(", ")}`}`;
}
