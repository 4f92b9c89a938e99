import type { Value } from "../formula/value.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import type { Model } from "../template/model.js";
import { checkedInputsOf } from "./checked-inputs.js";
import { serialOf } from "./date.js";
import { type InputPlan, inputPlanOf, type PlannedInput, type PlannedTable } from "./input-plan.js";
import { JobError } from "./job-error.js";
import type { JobRecord, RowValues } from "./record.js";

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
  mustBeUsable(model, missing === "refused" ? inputPlanOf(model, office) : undefined, job, values);
  return values;
}

/** Throws JobError for an unknown choice and, with a plan, for a missing input. */
export function mustBeUsable(
  model: Model,
  plan: InputPlan | undefined,
  job: JobRecord,
  values: readonly Value[],
): void {
  const missing = plan === undefined ? [] : missingIn(plan, job, values);
  const faults = [...missing, ...unknownChoices(model, values)];
  if (faults.length === 0) return;
  throw new JobError("job-incomplete", `The job record ${job.job} cannot be used:`, faults);
}

function missingIn({ required }: InputPlan, job: JobRecord, values: readonly Value[]): string[] {
  const { inputs, places } = required;
  const faults: string[] = [];
  let last: string | undefined;
  let rows: Rows;
  for (let i = 0; i < places.length; i++) {
    if (values[places[i] as number] !== null) continue;
    const input = inputs[i] as PlannedInput;
    const { cell, table } = input;
    if (table !== last) {
      // looked up once for inputs that follow one another
      const given = table === undefined ? undefined : job.inputs[table];
      rows = Array.isArray(given) ? given : undefined;
      last = table;
    }
    if (!inUse(input, rows)) continue;
    faults.push(`inputs.${cell.id} (${cell.declaration.label}) is missing. Give it a value.`);
  }
  return faults;
}

/** The same for a record that is not complete yet: what is missing is null, choices are not looked at. */
export function valuesAsGiven(model: Model, job: JobRecord, office?: OfficeValues): Value[] {
  const plan = inputPlanOf(model, office);
  const values = unaskedOf(plan, job).slice();
  // of most tables a job gives few rows, or none: only these are gone through
  for (const [name, given] of Object.entries(job.inputs)) {
    const single = plan.singles.get(name);
    if (single !== undefined) values[single.cell.index] = valueFor(single, job, undefined);
    const table = plan.tables.get(name);
    if (table !== undefined && Array.isArray(given)) fillRows(table, job, given, values);
  }
  return values;
}

function fillRows(
  table: PlannedTable,
  job: JobRecord,
  given: readonly (RowValues | null)[],
  values: Value[],
): void {
  const { rows, columns, dates, places } = table;
  const ownRows = rows[0]?.[0]?.ownRows ?? false;
  // rows of a person's own that are not given do not hold either
  const count = ownRows ? rows.length : Math.min(rows.length, given.length);
  const usual = usualOf(table, job, given.length);
  for (let row = 0, at = 0; row < count; row++) {
    const said = given[row];
    const first = at;
    for (let column = 0; column < dates.length; column++, at++) {
      values[places[at] as number] =
        said === null
          ? valueFor((rows[row] as readonly PlannedInput[])[column] as PlannedInput, job, given)
          : (usual[at] as Value);
    }
    // by what is given, not by what could be: most of a row is left as it usually is
    for (const key of Object.keys(said ?? {})) {
      const column = columns.get(key);
      const value = said?.[key];
      if (column === undefined || value === undefined || value === null) continue;
      values[places[first + column] as number] =
        value === "" ? null : dates[column] ? (serialOf(String(value)) ?? null) : value;
    }
  }
}

const usuals = new WeakMap<PlannedTable, (readonly Value[] | undefined)[]>();

/** What the inputs of a table hold where a job gives so many rows, and nothing in them. */
function usualOf(table: PlannedTable, job: JobRecord, count: number): readonly Value[] {
  const known = usuals.get(table) ?? [];
  usuals.set(table, known);
  known[count] ??= withNothing(table, job, count);
  return known[count];
}

function withNothing({ rows }: PlannedTable, job: JobRecord, count: number): readonly Value[] {
  const nothing = Array.from({ length: count }, () => ({}));
  return rows.flat().map((input) => valueFor(input, job, nothing));
}

const unasked = new WeakMap<InputPlan, readonly Value[]>();

/** The values of a job that gives nothing: the same for all under one office book. */
export function unaskedOf(plan: InputPlan, job: JobRecord): readonly Value[] {
  const known = unasked.get(plan);
  if (known !== undefined) return known;
  const values = [...plan.base];
  const nothing = { ...job, inputs: {} };
  for (const input of plan.inputs) values[input.cell.index] = valueFor(input, nothing, undefined);
  unasked.set(plan, values);
  return values;
}

/** The rows that a job gives for a table: null for one that it took out. */
type Rows = readonly (RowValues | null)[] | undefined;

/** The value of an input, by its row where it stands in a table that the job gives. */
export function valueFor(input: PlannedInput, job: JobRecord, rows: Rows): Value {
  const { cell, table, key = "" } = input;
  const idle = input.ready ? input.usual : null;
  const row = rows?.[(cell.row ?? 1) - 1];
  // a row that was taken out: not even the template's own values hold
  if (row === null) return idle;
  const given = table === undefined ? (job.inputs[cell.name] as InputValue | null) : row?.[key];
  // an empty text is a blank cell: it must not pass for a value that was given
  if (given === "") return null;
  if (given !== undefined && given !== null) {
    return input.date ? (serialOf(String(given)) ?? null) : given;
  }
  if (input.ofRow !== null && !(input.ownRows && rows !== undefined)) return input.ofRow;
  return inUse(input, rows) ? input.usual : idle;
}

/** Does the job (or the template) fill this row? Single cells always count. */
function inUse({ cell, inUseFrom, ownRows }: PlannedInput, rows: Rows): boolean {
  const row = cell.row ?? 1;
  if (rows === undefined) return inUseFrom === 0;
  if (rows[row - 1] === null) return false;
  // a job that gives a table of its own rows gives them in place of the template's
  if (ownRows) return rows.length >= row;
  return inUseFrom === 0 || rows.length >= inUseFrom;
}

/** Inputs chosen from a column must be in it; upper and lower case count as the same, as in a look-up. */
export function unknownChoices(model: Model, values: readonly Value[]): string[] {
  return checkedInputsOf(model).choices.flatMap(({ cell, among }) => {
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
