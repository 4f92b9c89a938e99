import { columnLetters } from "../../../address.js";
import { CellError, type Value } from "../../../formula/value.js";
import { type Cell, columnOf, type Model } from "../../../template/model.js";
import { escaped } from "../package.js";

/** Where a chart gets its points from: the model and the values to cache. */
export interface Source {
  readonly model: Model;
  readonly values: readonly Value[];
}

/** The cells behind a name: those of a column, or a single one. */
export function cellsOf(model: Model, name: string): readonly Cell[] {
  const single = model.byId.get(name);
  if (single !== undefined) return [single];
  const [table = "", key = ""] = name.split(".");
  return columnOf(model, table, key).cells;
}

/** The area of cells that lie one under another, as a formula of a chart names it. */
function reference(cells: readonly Cell[]): string {
  const [first, last] = [cells[0] as Cell, cells.at(-1) as Cell];
  const letters = columnLetters(first.column);
  const end = first === last ? "" : `:$${letters}$${last.line}`;
  return `<c:f>${escaped(`'${first.sheet}'!$${letters}$${first.line}${end}`)}</c:f>`;
}

/** Numbers with their values cached; what holds no number is left out of the cache. */
export function numbers({ values }: Source, cells: readonly Cell[]): string {
  const points = cells.map(({ index }, i) => {
    const value = values[index];
    return typeof value === "number" ? `<c:pt idx="${i}"><c:v>${value}</c:v></c:pt>` : "";
  });
  return `<c:numRef>${reference(cells)}<c:numCache><c:formatCode>General</c:formatCode><c:ptCount val="${cells.length}"/>${points.join("")}</c:numCache></c:numRef>`;
}

/** Texts with their values cached. */
export function texts({ values }: Source, cells: readonly Cell[]): string {
  const points = cells.map(({ index }, i) => {
    const value = values[index] ?? "";
    const shown = value instanceof CellError ? value.code : String(value);
    return `<c:pt idx="${i}"><c:v>${escaped(shown)}</c:v></c:pt>`;
  });
  return `<c:strRef>${reference(cells)}<c:strCache><c:ptCount val="${cells.length}"/>${points.join("")}</c:strCache></c:strRef>`;
}
