import type { Finding } from "../audit/index.js";
import { RillbookError } from "../errors.js";
import { JobError } from "../job/job-error.js";
import { systemFor, templateFor } from "../job/read.js";
import type { JobRecord } from "../job/record.js";
import { newJob } from "../job/start.js";
import { appended } from "../job/trail/chain.js";
import { type Change, oneLine, type TrailEntry } from "../job/trail/entry.js";
import { unitFor } from "../job/trail/inputs.js";
import { longestNote } from "../job/trail/schema.js";
import { validateJob } from "../job/validate.js";
import { unknownChoices, valuesAsGiven } from "../job/values.js";
import type { Cell, Model } from "../template/model.js";
import { modelOf } from "../template/models.js";
import type { Template } from "../template/template.js";
import { identityProperties, type WorkbookIdentity } from "../workbook/match/identity.js";
import { matchWorkbook } from "../workbook/match/match.js";
import { toldIdentity } from "../workbook/match/told-identity.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { cellInputs } from "./cells.js";
import { unsayable, withInputs } from "./inputs.js";
import { changedBesideInputs } from "./other-changes.js";
import { asWritten, mustStemFrom } from "./written.js";

/** Who takes a workbook in, when, and why. */
export type Taker = Pick<Change, "by" | "time" | "note">;

/** A job record to bring the changes into, and the path it was read from. */
export interface Into {
  readonly record: JobRecord;
  readonly file: string;
}

export interface Taken {
  readonly job: JobRecord;
  /** The entries that tell what was changed in the workbook. */
  readonly entries: readonly TrailEntry[];
  /** What was changed besides inputs, none of which is taken in. */
  readonly findings: readonly Finding[];
}

/**
 * Makes a job record from an edited workbook: its inputs, with an entry in the trail for each
 * that is no longer what it was when the workbook was written. Formulas, published figures and
 * prices are never taken in; where they were changed, `findings` names them.
 * Throws RillbookError for a foreign workbook, another template or version, inputs against
 * their rules or without their names, and a trail that does not hold. A workbook whose custom properties a
 * library dropped is taken in only into the record that it was written from, against which the rest is held.
 *
 * @param into the record to bring the changes into; a new one is made where it is left out
 */
export function takeWorkbook(
  content: WorkbookContent,
  templates: readonly Template[],
  file: string,
  taker: Taker,
  into?: Into,
): Taken {
  const { identity, lost } = toldIdentity(content);
  const model = modelFor(content, identity, templates, file);
  const match = matchWorkbook(content, model);
  const cells = cellInputs(model, match);
  refuse(file, cells.faults);
  const written = asWritten(
    model,
    content,
    identity,
    file,
    lost ? heldAgainst(into) : "properties",
  );
  if (into !== undefined) {
    mustBeSameJob(into, identity, model, file);
    mustStemFrom(model, written, into.record, file, into.file);
  }
  const base = into?.record ?? freshRecord(model, identity);
  const changes = model.cells.flatMap((cell) => {
    const [old = null, now = null] = [written.inputs.get(cell.id), cells.values.get(cell.id)];
    if (cell.declaration.kind !== "input" || old === now) return [];
    const note = noteOf(taker, content, cells.formulas.get(cell.id));
    return [changeOf(cell, old, now, taker, note)];
  });
  const trail = appended(written.trail, changes);
  const raw = { ...base, inputs: withInputs(model, base, cells.values, written.office), trail };
  const job = validateJob(model, raw, `taken from ${file}`);
  refuse(file, unsayable(model, job, cells.values, written.office));
  refuse(file, unknownChoices(model, valuesAsGiven(model, job, written.office)));
  return {
    job,
    entries: trail.slice(written.trail.length),
    findings: changedBesideInputs({ content, model, match }, identity),
  };
}

const heldAgainst = (into: Into | undefined) => (into === undefined ? "nothing" : "record");

function modelFor(
  content: WorkbookContent,
  identity: WorkbookIdentity,
  templates: readonly Template[],
  file: string,
): Model {
  const lacking = (["template", "version", "units"] as const).find(
    (key) => identity[key] === undefined,
  );
  if (lacking !== undefined) {
    throw new RillbookError(
      "workbook-foreign",
      `${file} does not say that rillbook wrote it: the custom property "${identityProperties[lacking]}" is missing. Use a workbook written by "rillbook bid", saved as .xlsx with its properties.`,
    );
  }
  const template = templateFor(identity.template, identity.version, templates, file);
  const model = modelOf(template, systemFor(identity.units, file));
  if (content.date1904) {
    throw new RillbookError(
      "workbook-dates",
      `${file} counts dates from 1904, but its formulas are written for dates from 1900. Turn that setting off in the spreadsheet program, look at the dates, and save again.`,
    );
  }
  return model;
}

function mustBeSameJob(
  { record, file: recordFile }: Into,
  { job }: WorkbookIdentity,
  model: Model,
  file: string,
): void {
  const { name, version } = model.template;
  const pairs: [string, unknown, unknown][] = [
    ["job", record.job, job],
    ["template", record.template, name],
    ["version", record.version, version],
    ["units", record.units, model.system],
  ];
  for (const [what, own, other] of pairs) {
    if (own === other) continue;
    throw new RillbookError(
      "other-job",
      `${recordFile} has ${what} ${JSON.stringify(own)}, but the workbook ${file} has ${JSON.stringify(other)}. Name the record of this job, or a new file.`,
    );
  }
}

function freshRecord(model: Model, { job = "", about, office }: WorkbookIdentity): JobRecord {
  const { office: _, guide: __, ...fresh } = { ...newJob(model, job), inputs: {} };
  return {
    ...fresh,
    ...(about === undefined ? {} : { about }),
    ...(office === undefined ? {} : { office }),
  };
}

function changeOf(
  cell: Cell,
  old: Change["old"],
  now: Change["new"],
  { by, time }: Taker,
  note: string,
): Change {
  const unit = unitFor(cell);
  return { time, by, input: cell.id, old, new: now, unit, from: "changed in the workbook", note };
}

/** The taker's note, the formula behind the value, and what the file says of its last save. */
function noteOf({ note }: Taker, { properties }: WorkbookContent, formula?: string): string {
  const { lastModifiedBy, modified } = properties;
  const editor = lastModifiedBy?.trim() ? `by "${lastModifiedBy.trim()}"` : "by nobody named";
  const claim = `the file says it was last saved ${editor}, ${modified ?? "at no time given"}`;
  const parts = [note, formula === undefined ? undefined : `typed as =${formula}`, claim];
  const line = oneLine(parts.filter(Boolean).join("; "));
  return line.length <= longestNote ? line : `${line.slice(0, longestNote - 1)}…`;
}

function refuse(file: string, faults: readonly string[]): void {
  if (faults.length === 0) return;
  throw new JobError("workbook-inputs", `The workbook ${file} cannot be taken in:`, faults);
}
