import { codeOf, type FittedTable } from "../book/fill.js";
import { Cone, Reach } from "../evaluate/cone.js";
import type { Value } from "../formula/value.js";
import { inputPlanOf } from "../job/input-plan.js";
import type { Model } from "../template/model.js";
import type { Moved } from "./lines.js";

/** One thing that changed: an input, or a row of the office book. */
interface Change {
  readonly item: string;
  readonly cells: readonly (readonly [index: number, value: Value])[];
}

/**
 * What moved a cell (the price) between two lists of given values of one model: each changed
 * input and office-book row put in alone, the others as they were. What is left of the whole
 * change (`together`) comes only from several changes meeting, as price and quantity do.
 * `tables` are those that the office book fills. Undefined where either value is no number.
 */
export function whatMoved(
  model: Model,
  before: readonly Value[],
  after: readonly Value[],
  target: string,
  tables: readonly FittedTable[],
): Moved | undefined {
  const changes = [
    ...changedInputs(model, before, after),
    ...tables.flatMap((table) => changedRows(table, before, after)),
  ];
  const cone = coneFor(model, target);
  const start = cone.calculate(before);
  const end = cone.calculate(after);
  const at = model.byId.get(target)?.index as number;
  const [from, to] = [start[at], end[at]];
  if (typeof from !== "number" || typeof to !== "number") return undefined;
  const reach = new Reach(model, start, [target], cone);
  const items = changes.flatMap(({ item, cells }) => {
    const [value] = reach.under(cells);
    // an error alone (a new code without its row) moves the price only together with others
    const by = typeof value === "number" ? value - from : 0;
    return by === 0 ? [] : [{ item, by }];
  });
  items.sort((a, b) => Math.abs(b.by) - Math.abs(a.by) || (a.item < b.item ? -1 : 1));
  const alone = items.reduce((sum, { by }) => sum + by, 0);
  return { from, to, items, together: to - from - alone };
}

const cones = new WeakMap<Model, Map<string, Cone>>();

function coneFor(model: Model, target: string): Cone {
  const ofModel = cones.get(model) ?? new Map<string, Cone>();
  cones.set(model, ofModel);
  const known = ofModel.get(target) ?? new Cone(model, [target]);
  ofModel.set(target, known);
  return known;
}

function changedInputs(model: Model, before: readonly Value[], after: readonly Value[]): Change[] {
  const changes: Change[] = [];
  const rows = new Map<string, (readonly [number, Value])[]>();
  for (const { cell, table, ownRows } of inputPlanOf(model).inputs) {
    const value = after[cell.index] as Value;
    if (before[cell.index] === value) continue;
    const changed = [cell.index, value] as const;
    const row = `${table}[${cell.row}]`;
    const known = rows.get(row);
    if (known !== undefined) known.push(changed);
    else if (!ownRows) changes.push({ item: cell.id, cells: [changed] });
    else {
      // a row that comes or goes moves the price only as a whole
      const cells = [changed];
      rows.set(row, cells);
      changes.push({ item: row, cells });
    }
  }
  return changes;
}

/** The rows of a table that differ, told apart by their code (by their place where there is none). */
function changedRows(
  table: FittedTable,
  before: readonly Value[],
  after: readonly Value[],
): Change[] {
  const old = rowsIn(table, before);
  const fresh = rowsIn(table, after);
  const used = new Set([...old.values()].map(({ row }) => row));
  const free = Array.from({ length: table.capacity }, (_, row) => row).filter(
    (row) => !used.has(row),
  );
  const changes: Change[] = [];
  for (const code of new Set([...old.keys(), ...fresh.keys()])) {
    const was = old.get(code);
    const is = fresh.get(code);
    const row = was?.row ?? free.shift();
    // a full table has no place for a code that is new: its effect shows only together
    if (row === undefined) continue;
    const cells = table.columns.flatMap((first, i) => {
      const value = is?.values[i] ?? null;
      return value === (was?.values[i] ?? null) ? [] : [[first + row, value] as const];
    });
    if (cells.length > 0) changes.push({ item: `${table.from}.${code}`, cells });
  }
  return changes;
}

function rowsIn(
  { columns, keys, capacity }: FittedTable,
  values: readonly Value[],
): Map<string, { row: number; values: readonly Value[] }> {
  const code = keys.indexOf("code");
  const found = new Map<string, { row: number; values: readonly Value[] }>();
  for (let row = 0; row < capacity; row++) {
    const held = columns.map((first) => values[first + row] as Value);
    if (held.every((value) => value === null)) continue;
    const name = code < 0 ? `row ${row + 1}` : codeOf(held[code] ?? null);
    if (!found.has(name)) found.set(name, { row, values: held });
  }
  return found;
}
