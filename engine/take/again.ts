import { inputPlanOf } from "../job/input-plan.js";
import type { JobRecord } from "../job/record.js";
import { recorded } from "../job/trail/inputs.js";
import { valuesAsGiven } from "../job/values.js";
import type { Model } from "../template/model.js";
import type { CellInputs } from "./cells.js";
import type { AsWritten } from "./written.js";

/** What a record has already of a workbook that it is older than no more. */
export interface TakenBefore {
  /** How many inputs that were changed in the workbook stand in the record. */
  readonly inputs: number;
  /** Nothing more was changed in it. */
  readonly whole: boolean;
  /** The record as it is now, in the place of what the workbook was written with. */
  readonly now: AsWritten;
}

/**
 * Has a record gone on from the state in which a workbook was written, by the workbook's own changes? Undefined where it
 * has not gone on, where it was changed past its trail, or where both changed one input to two values:
 * there nobody can tell which counts.
 */
export function takenBefore(
  model: Model,
  written: AsWritten,
  { values }: Pick<CellInputs, "values">,
  record: JobRecord,
): TakenBefore | undefined {
  const own = record.trail ?? [];
  const isLater = written.trail.every(({ hash }, i) => own[i]?.hash === hash);
  const later = own.slice(written.trail.length);
  if (!isLater || later.length === 0) return undefined;
  const given = valuesAsGiven(model, record, written.office);
  const inputs = new Map(
    inputPlanOf(model).inputs.map(({ cell }) => [cell.id, recorded(cell, given[cell.index])]),
  );
  const told = new Map([...written.inputs, ...later.map((one) => [one.input, one.new] as const)]);
  if ([...inputs].some(([id, value]) => value !== (told.get(id) ?? null))) return undefined;
  const changed = [...values].filter(([id, value]) => value !== (written.inputs.get(id) ?? null));
  const stands = ([id, value]: (typeof changed)[number]) =>
    later.some((one) => one.input === id && one.new === value);
  const whole = changed.every(stands);
  const apart = later.some(({ input }) => inputs.get(input) !== (values.get(input) ?? null));
  if (!whole && apart) return undefined;
  return {
    inputs: changed.filter(stands).length,
    whole,
    now: { ...written, inputs, trail: own },
  };
}
