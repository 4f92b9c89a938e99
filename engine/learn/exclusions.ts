import type { Value } from "../formula/value.js";
import type { RowValues } from "../job/record.js";
import type { Learns } from "../template/learns.js";
import { columnValues, type Model } from "../template/model.js";
import { notLearned } from "./take-rates.js";

/** A row that a person left out of an older workbook of learned rates, with the reason. */
export interface Exclusion {
  readonly job: string;
  readonly task: string;
  readonly code: string;
  readonly quantity: number;
  readonly hours: number;
  readonly reason: string;
}

/** What became of the exclusions of an older workbook. */
export interface CarriedOver {
  readonly kept: readonly Exclusion[];
  /** Rows that say another quantity or other hours than they did: they count until somebody looks again. */
  readonly changed: readonly Exclusion[];
  /** Rows that are not there any more. */
  readonly gone: readonly Exclusion[];
}

/** The rows that a workbook of learned rates leaves out with a reason. */
export function exclusionsIn(model: Model, values: readonly Value[]): Exclusion[] {
  const { learns } = model.template;
  if (learns === undefined) throw notLearned(model);
  const { evidence } = learns;
  const column = (key: "job" | "task" | "code" | "quantity" | "hours" | "reason") =>
    columnValues(model, values, evidence.table, evidence[key]);
  const [jobs, tasks, codes] = [column("job"), column("task"), column("code")];
  const [quantities, hours] = [column("quantity"), column("hours")];
  return column("reason").flatMap((reason, row): Exclusion[] => {
    if (typeof reason !== "string" || reason === "") return [];
    const [job, task, code] = [jobs, tasks, codes].map((list) => String(list[row] ?? "")) as [
      string,
      string,
      string,
    ];
    return [
      {
        ...{ job, task, code, reason },
        quantity: Number(quantities[row]),
        hours: Number(hours[row]),
      },
    ];
  });
}

/** Rows of evidence with the exclusions that an older workbook has for the same job, task and rate. */
export function excluded(
  rows: readonly RowValues[],
  exclusions: readonly Exclusion[],
  { evidence: to }: Learns,
): { readonly rows: RowValues[]; readonly carried: CarriedOver } {
  const named = (job: unknown, task: unknown, code: unknown) =>
    JSON.stringify([job, task, String(code).toLowerCase()]);
  const left = new Map(exclusions.map((one) => [named(one.job, one.task, one.code), one]));
  const kept: Exclusion[] = [];
  const changed: Exclusion[] = [];
  const found = rows.map((row): RowValues => {
    const key = named(row[to.job], row[to.task], row[to.code]);
    const one = left.get(key);
    if (one === undefined) return row;
    left.delete(key);
    const same = row[to.quantity] === one.quantity && row[to.hours] === one.hours;
    (same ? kept : changed).push(one);
    return same ? { ...row, [to.reason]: one.reason } : row;
  });
  return { rows: found, carried: { kept, changed, gone: [...left.values()] } };
}
