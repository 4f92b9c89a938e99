import { inputPlanOf, type PlannedInput } from "../job/input-plan.js";
import { openingRows } from "../job/opening-rows.js";
import type { InputValues, JobRecord, RowValues } from "../job/record.js";
import { recorded } from "../job/trail/inputs.js";
import { valuesAsGiven } from "../job/values.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import type { Model } from "../template/model.js";

type Wanted = ReadonlyMap<string, InputValue | null>;

/**
 * The inputs of a record changed so that they give the wanted values; what gives them already
 * stays as it is written. A blank row among others becomes null.
 */
export function withInputs(
  model: Model,
  job: JobRecord,
  wanted: Wanted,
  office: OfficeValues,
): InputValues {
  const now = valuesAsGiven(model, job, office);
  const inputs: Record<string, InputValues[string]> = { ...job.inputs };
  const tables = new Map<string, PlannedInput[]>();
  for (const input of inputPlanOf(model).inputs) {
    const { cell, table } = input;
    if (recorded(cell, now[cell.index]) === wanted.get(cell.id)) continue;
    if (table === undefined) inputs[cell.name] = wanted.get(cell.id) ?? null;
    else tables.set(table, [...(tables.get(table) ?? []), input]);
  }
  for (const [table, changed] of tables) {
    inputs[table] = changedRows(model, job, table, changed, wanted, office);
  }
  return inputs;
}

function changedRows(
  model: Model,
  job: JobRecord,
  table: string,
  changed: readonly PlannedInput[],
  wanted: Wanted,
  office: OfficeValues,
): (RowValues | null)[] {
  const given = job.inputs[table];
  const planned = inputPlanOf(model, office).inputs.filter((one) => one.table === table);
  const start = planned.some(({ ownRows }) => ownRows) ? openingRows(model, table, office) : [];
  const rows: (RowValues | null)[] = Array.isArray(given) ? [...given] : start;
  for (const { cell, key = "" } of changed) {
    const at = (cell.row ?? 1) - 1;
    while (rows.length <= at) rows.push(null);
    rows[at] = { ...rows[at], [key]: wanted.get(cell.id) ?? null };
  }
  const filled = new Set<number>();
  for (const { cell, ready, usual } of planned) {
    const value = wanted.get(cell.id) ?? null;
    const idle = ready ? recorded(cell, usual) : null;
    if (value !== null && value !== idle) filled.add(cell.row ?? 0);
  }
  const settled = rows.map((row, i) => (filled.has(i + 1) ? (row ?? {}) : null));
  // rows that the template fixes must be given as blank
  const byTemplate = planned.filter(({ inUseFrom, ownRows }) => inUseFrom === 0 && !ownRows);
  const least = Math.max(0, ...byTemplate.map(({ cell }) => cell.row ?? 0));
  while (settled.length > least && settled.at(-1) === null) settled.pop();
  return settled;
}

/** Blank cells for which a job record has no words, since the template's own value would hold: a sentence a row. */
export function unsayable(
  model: Model,
  job: JobRecord,
  wanted: Wanted,
  office: OfficeValues,
): string[] {
  const values = valuesAsGiven(model, job, office);
  const byRow = new Map<string, (readonly [cell: string, puts: string])[]>();
  for (const { cell, table } of inputPlanOf(model).inputs) {
    const value = recorded(cell, values[cell.index]);
    if (value === wanted.get(cell.id)) continue;
    const row = table === undefined ? cell.id : `${table} ${cell.row}`;
    const said = [`${cell.id} (${cell.declaration.label})`, JSON.stringify(value)] as const;
    byRow.set(row, [...(byRow.get(row) ?? []), said]);
  }
  return [...byRow.values()].map((cells) => {
    const [are, fill] = cells.length > 1 ? ["are", "these cells"] : ["is", "the cell"];
    const names = cells.map(([name]) => name).join(", ");
    const puts = cells.map(([, one]) => one).join(", ");
    return `${names} ${are} blank in the workbook, but where nothing is given the template puts ${puts}. Fill ${fill}.`;
  });
}
