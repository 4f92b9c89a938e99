import type { Value } from "../formula/value.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import type { Model } from "../template/model.js";
import { serialOf } from "./date.js";
import { inputPlanOf, type PlannedInput } from "./input-plan.js";
import { JobError } from "./job-error.js";
import type { JobRecord } from "./record.js";

/** What becomes of inputs that a job does not give yet: a bid is written with them blank, and does not stand. */
export type Missing = "refused" | "left blank";

/**
 * The list of values of a job before calculation, without the office book's rows: inputs (as given, or
 * their default: the office book's rule, else the template's) and published figures, by the index of the
 * cell; all else is null. Throws JobError for a missing input or an unknown choice.
 */
export function inputValues(
  model: Model,
  job: JobRecord,
  office?: OfficeValues,
  missing: Missing = "refused",
): Value[] {
  const values = valuesAsGiven(model, job, office);
  const faults: string[] = [];
  for (const input of inputPlanOf(model, office).inputs) {
    const { cell } = input;
    if (missing === "left blank") break;
    if (values[cell.index] === null && !input.optional && inUse(input, job)) {
      faults.push(`inputs.${cell.id} (${cell.declaration.label}) is missing. Give it a value.`);
    }
  }
  faults.push(...unknownChoices(model, values));
  if (faults.length > 0) {
    throw new JobError("job-incomplete", `The job record ${job.job} cannot be used:`, faults);
  }
  return values;
}

/** The same for a record that is not complete yet: what is missing is null, choices are not looked at. */
export function valuesAsGiven(model: Model, job: JobRecord, office?: OfficeValues): Value[] {
  const { base, inputs } = inputPlanOf(model, office);
  const values = [...base];
  for (const input of inputs) values[input.cell.index] = valueFor(input, job);
  return values;
}

function valueFor(input: PlannedInput, job: JobRecord): Value {
  const idle = input.ready ? input.usual : null;
  if (isBlankRow(input, job)) return idle;
  const given = givenFor(input, job);
  // an empty text is a blank cell: it must not pass for a value that was given
  if (given === "") return null;
  if (given !== undefined) return input.date ? (serialOf(String(given)) ?? null) : given;
  if (input.ofRow !== null && !isReplaced(input, job)) return input.ofRow;
  return inUse(input, job) ? input.usual : idle;
}

function givenFor({ cell, table, key = "" }: PlannedInput, job: JobRecord): InputValue | undefined {
  if (table === undefined) return (job.inputs[cell.name] as InputValue | null) ?? undefined;
  const rows = job.inputs[table];
  return Array.isArray(rows) ? (rows[(cell.row ?? 1) - 1]?.[key] ?? undefined) : undefined;
}

/** Does the job (or the template) fill this row? Single cells always count. */
function inUse(input: PlannedInput, job: JobRecord): boolean {
  const { inUseFrom, table = "" } = input;
  if (isBlankRow(input, job)) return false;
  const rows = job.inputs[table];
  if (isReplaced(input, job)) return (rows as unknown[]).length >= (input.cell.row ?? 1);
  if (inUseFrom === 0) return true;
  return Array.isArray(rows) && rows.length >= inUseFrom;
}

/** Does the job give a table of its own rows, in place of the template's? */
function isReplaced({ ownRows, table }: PlannedInput, job: JobRecord): boolean {
  return ownRows && table !== undefined && Array.isArray(job.inputs[table]);
}

/** Was the row taken out, so that not even the template's own values hold? */
function isBlankRow({ cell, table }: PlannedInput, job: JobRecord): boolean {
  if (table === undefined) return false;
  const rows = job.inputs[table];
  return Array.isArray(rows) && rows[(cell.row ?? 1) - 1] === null;
}

/** Inputs chosen from a column must be in it; upper and lower case count as the same, as in a look-up. */
export function unknownChoices(model: Model, values: readonly Value[]): string[] {
  return inputPlanOf(model).choices.flatMap(({ cell, among }) => {
    const value = values[cell.index];
    if (value === null || value === undefined) return [];
    if (among.some((index) => values[index] === value)) return [];
    const known = among.map((index) => values[index]).filter((one) => one !== null);
    const wanted = String(value).toLowerCase();
    if (known.some((one) => String(one).toLowerCase() === wanted)) return [];
    return [
      `inputs.${cell.id} is "${value}", but must be one of: ${known.join(", ")}. Choose one.`,
    ];
  });
}
