import { RillbookError } from "../errors.js";
import { inputPlanOf } from "../job/input-plan.js";
import { JobError } from "../job/job-error.js";
import { openingRows } from "../job/opening-rows.js";
import type { InputValues, JobRecord, RowValues } from "../job/record.js";
import { appended } from "../job/trail/chain.js";
import type { Change, TrailEntry } from "../job/trail/entry.js";
import { recorded, unitFor } from "../job/trail/inputs.js";
import { verifyTrail } from "../job/trail/verify.js";
import { typedValue } from "../job/typed-value.js";
import { validateJob } from "../job/validate.js";
import { unknownChoices, valuesAsGiven } from "../job/values.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import { hasOwnRows } from "../template/own-rows.js";
import type { Assignment } from "./assignment.js";

/** Who sets inputs, when, and where the values come from. */
export type Circumstances = Pick<Change, "by" | "time" | "from" | "note">;

/**
 * The job record with some inputs set, each with an entry in the trail; also one that keeps
 * its value, since its origin may be new. A row can be added below the last one; a row taken
 * out stays as a blank one where others follow, so that these keep their names.
 * Throws RillbookError for a value against the template's rules and for a trail that does not hold.
 */
export function setInputs(
  model: Model,
  job: JobRecord,
  assignments: readonly Assignment[],
  circumstances: Circumstances,
  file: string,
  office?: OfficeValues,
): { job: JobRecord; entries: readonly TrailEntry[] } {
  const trail = job.trail ?? [];
  mustHold(trail, file);
  let inputs = job.inputs;
  const changes: Change[] = [];
  for (const assignment of assignments) {
    const before = valuesAsGiven(model, { ...job, inputs }, office);
    inputs = assigned(model, inputs, assignment, office);
    const valid = validTyped(model, { ...job, inputs }, file);
    inputs = valid.inputs;
    const after = valuesAsGiven(model, valid, office);
    for (const cell of cellsOf(model, assignment)) {
      const [old, now] = [before, after].map((values) => recorded(cell, values[cell.index]));
      if (assignment.kind === "row" && old === now) continue;
      changes.push({
        ...circumstances,
        input: cell.id,
        old: old ?? null,
        new: now ?? null,
        unit: unitFor(cell),
      });
    }
  }
  const grown = appended(trail, changes);
  const made = validateJob(model, { ...job, inputs, trail: grown }, file);
  const faults = unknownChoices(model, valuesAsGiven(model, made, office));
  if (faults.length > 0) throw notSet(file, faults);
  return { job: made, entries: grown.slice(trail.length) };
}

/** The record was in order: what is at fault is what was typed. */
function validTyped(model: Model, raw: JobRecord, file: string): JobRecord {
  try {
    return validateJob(model, raw, file);
  } catch (error) {
    throw error instanceof JobError ? notSet(file, error.faults) : error;
  }
}

/** Inputs by the names that are typed to set them, not by their place in the record. */
const notSet = (file: string, faults: readonly string[]): JobError =>
  new JobError(
    "job-invalid",
    `Nothing was set, and ${file} stays as it is:`,
    faults.map((one) => one.replace(/^inputs\./, "")),
  );

/** Throws RillbookError where a trail was tampered with: what is put at its end would cover that up. */
export function mustHold(trail: readonly TrailEntry[], file: string): void {
  const [fault] = verifyTrail(trail);
  if (fault === undefined) return;
  throw new RillbookError(
    "trail-broken",
    `The trail of ${file} does not hold, so nothing is added to it. ${fault.sentence} Go back to a copy of the file whose trail holds.`,
  );
}

function cellsOf(model: Model, assignment: Assignment): Cell[] {
  if (assignment.kind === "input") return [assignment.cell];
  const { table, row } = assignment;
  return inputPlanOf(model)
    .inputs.filter((one) => one.table === table && one.cell.row === row)
    .map(({ cell }) => cell);
}

function assigned(
  model: Model,
  inputs: InputValues,
  assignment: Assignment,
  office: OfficeValues | undefined,
): InputValues {
  if (assignment.kind === "row") {
    const { table, row } = assignment;
    return { ...inputs, [table]: withRow(model, inputs, table, row, () => null, office) };
  }
  const { cell, text } = assignment;
  const value = typedFor(cell, text);
  if (cell.table === undefined) return { ...inputs, [cell.name]: value };
  const key = cell.name.slice(cell.table.length + 1);
  const change = (row: RowValues | null) => ({ ...row, [key]: value });
  return {
    ...inputs,
    [cell.table]: withRow(model, inputs, cell.table, cell.row ?? 1, change, office),
  };
}

/** Errors of a typed value name the input. */
function typedFor(cell: Cell, text: string): InputValue | null {
  try {
    return typedValue(cell, text);
  } catch (error) {
    if (!(error instanceof RillbookError) || error.message.startsWith(cell.id)) throw error;
    throw new RillbookError(error.code, `${cell.id} (${cell.declaration.label}): ${error.message}`);
  }
}

type Row = RowValues | null;

function withRow(
  model: Model,
  inputs: InputValues,
  table: string,
  row: number,
  change: (row: Row) => Row,
  office: OfficeValues | undefined,
): Row[] {
  const given = inputs[table];
  const block = model.tables.get(table)?.block;
  const own = block !== undefined && hasOwnRows(block);
  const start = own ? openingRows(model, table, office) : [];
  const rows: Row[] = Array.isArray(given) ? [...given] : start;
  // rows that the template fixes are there without being given
  const there = Math.max(rows.length, own ? 0 : (block?.data?.length ?? 0));
  if (row > there + 1) {
    throw new RillbookError(
      "row-too-far",
      `${table}[${row}] cannot be filled: the table has ${there} rows so far, and the next is ${there + 1}. Use that one.`,
    );
  }
  while (rows.length < row) rows.push({});
  rows[row - 1] = change(rows[row - 1] ?? null);
  if (own || block?.data === undefined) trimBlank(rows);
  return rows;
}

/** A blank row with none after it is no row. */
function trimBlank(rows: Row[]): void {
  while (rows.length > 0 && rows.at(-1) === null) rows.pop();
}
