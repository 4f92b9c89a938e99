import type { Finding } from "../audit/index.js";
import { RillbookError } from "../errors.js";
import type { JobRecord } from "../job/record.js";
import { newJob } from "../job/start.js";
import { appended } from "../job/trail/chain.js";
import type { TrailEntry } from "../job/trail/entry.js";
import { validateJob } from "../job/validate.js";
import { unknownChoices, valuesAsGiven } from "../job/values.js";
import type { Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import type { WorkbookIdentity } from "../workbook/match/identity.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { type TakenBefore, takenBefore } from "./again.js";
import { namings, type Taker } from "./changes.js";
import { changedSince, type FilledIn, filledIn, refuse } from "./filled-in.js";
import { unsayable, withInputs } from "./inputs.js";
import { asWritten, mustStemFrom } from "./written.js";

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
  /** How many inputs changed in the workbook stood in the record before; absent where it is not the workbook's later state. */
  readonly before?: number;
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
  const filled = filledIn(content, templates, file);
  const { identity, model, cells } = filled;
  const held = filled.lost ? heldAgainst(into) : "properties";
  const first = asWritten(model, content, identity, file, held);
  if (into !== undefined) mustBeSameJob(into, identity, model, file);
  const known = into && takenBefore(model, first, cells, into.record);
  if (into !== undefined && known?.whole) return nothingNew(filled, into.record, known, taker);
  const written = known?.now ?? first;
  if (into !== undefined) mustStemFrom(model, written, into.record, file, into.file);
  const base = into?.record ?? freshRecord(model, identity);
  const { trail, entries, findings } = changedSince(filled, written, taker);
  const raw = { ...base, inputs: withInputs(model, base, cells.values, written.office), trail };
  const job = validateJob(model, raw, `taken from ${file}`);
  refuse(file, unsayable(model, job, cells.values, written.office));
  refuse(file, unknownChoices(model, valuesAsGiven(model, job, written.office)));
  const before = known === undefined ? {} : { before: known.inputs };
  return { job, entries, findings, ...before };
}

/**
 * All of the workbook's changes stand in the record: it stays as it is, but that a taker is named for those by nobody
 * named. What else was changed is told all the same.
 */
function nothingNew(
  filled: FilledIn,
  job: JobRecord,
  { inputs, now }: TakenBefore,
  taker: Taker,
): Taken {
  const { findings } = changedSince(filled, now, taker);
  const trail = appended(now.trail, namings(filled.model, now.trail, taker));
  const entries = trail.slice(now.trail.length);
  return {
    job: entries.length === 0 ? job : { ...job, trail },
    ...{ entries, findings, before: inputs },
  };
}

const heldAgainst = (into: Into | undefined) => (into === undefined ? "nothing" : "record");

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
  const { guide: _, ...fresh } = { ...newJob(model, job), inputs: {} };
  return {
    ...fresh,
    ...(about === undefined ? {} : { about }),
    ...(office === undefined ? {} : { office }),
  };
}
