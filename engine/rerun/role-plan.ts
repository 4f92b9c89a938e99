import { saidBy } from "../evaluate/said-by.js";
import { CellError, type Value } from "../formula/value.js";
import { writtenDate } from "../job/date.js";
import { rootErrors } from "../job/errors-in-cells.js";
import type { Cell, Model } from "../template/model.js";
import type { RolePlan } from "../template/role-plan.js";
import type { Figures, JobLine } from "./lines.js";

/** The money of a calculated job. */
export function figuresOf(
  { price, cost, sections }: RolePlan,
  valueAt: (cell: Cell) => Value,
): Pick<Figures, "price" | "cost" | "sections"> {
  return {
    price: figure(valueAt(price)),
    cost: figure(valueAt(cost)),
    sections: Object.fromEntries(sections.map(({ label, cell }) => [label, figure(valueAt(cell))])),
  };
}

function figure(value: Value): number | string {
  if (typeof value === "number") return value;
  if (!(value instanceof CellError)) return `not a number: ${String(value)}`;
  return value.origin === undefined ? value.code : `${value.code} (from ${value.origin})`;
}

/** The errors in the cells that were calculated, where there are any. */
export function inError(
  model: Model,
  values: readonly Value[],
  cells: readonly Cell[],
): JobLine["inError"] {
  const roots = rootErrors(model, values, cells);
  if (roots.length === 0) return undefined;
  return {
    cells: roots.reduce((sum, one) => sum + one.cells, 0),
    roots: roots.map(({ cell, code }) => ({ name: cell.id, error: code })),
  };
}

export interface CheckState {
  readonly name: string;
  readonly level: "must" | "look";
  readonly message: string;
}

/** The checks that say no, each once, with the sentence of the first row that fails. */
export function failing({ checks, model }: RolePlan, values: readonly Value[]): CheckState[] {
  const failed: CheckState[] = [];
  for (const { name, level, cells } of checks) {
    const cell = cells.find(({ index }) => values[index] !== true);
    if (cell === undefined) continue;
    const state = values[cell.index];
    const message = state instanceof CellError ? figure(state) : saidBy(model, cell, values);
    failed.push({ name, level, message: String(message) });
  }
  return failed;
}

/** The quotes a job uses that end before the day (a serial number). */
export function expiredQuotes(
  { quotes }: RolePlan,
  values: readonly Value[],
  day: number,
): JobLine["expired"] {
  return quotes.flatMap(({ code, goodUntil }) => {
    const last = values[goodUntil];
    if (typeof last !== "number" || last >= day) return [];
    return [{ code: String(values[code]), goodUntil: writtenDate(last) }];
  });
}
