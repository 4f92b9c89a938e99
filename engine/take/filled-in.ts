import type { Finding } from "../audit/index.js";
import { JobError } from "../job/job-error.js";
import { appended } from "../job/trail/chain.js";
import type { TrailEntry } from "../job/trail/entry.js";
import type { Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import type { WorkbookIdentity } from "../workbook/match/identity.js";
import { matchWorkbook } from "../workbook/match/match.js";
import type { WorkbookMatch } from "../workbook/match/result.js";
import { toldIdentity } from "../workbook/match/told-identity.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { type CellInputs, cellInputs } from "./cells.js";
import { changesOf, namings, type Taker } from "./changes.js";
import { modelOfWorkbook } from "./model-of.js";
import { changedBesideInputs } from "./other-changes.js";
import type { AsWritten } from "./written.js";

/** A workbook that a person filled in, with the inputs that its cells hold. */
export interface FilledIn {
  readonly content: WorkbookContent;
  readonly identity: WorkbookIdentity;
  /** The custom properties are gone: the identity is what the first sheet says. */
  readonly lost: boolean;
  readonly model: Model;
  readonly match: WorkbookMatch;
  readonly cells: CellInputs;
}

/** Throws RillbookError for a foreign workbook, and for an input whose cell holds what it cannot. */
export function filledIn(
  content: WorkbookContent,
  templates: readonly Template[],
  file: string,
): FilledIn {
  const { identity, lost } = toldIdentity(content);
  const model = modelOfWorkbook(content, identity, templates, file);
  const match = matchWorkbook(content, model);
  const cells = cellInputs(model, match);
  refuse(file, cells.faults);
  return { content, identity, lost, model, match, cells };
}

/** What was done to a workbook since it was written. */
export interface Since {
  /** The trail as written, then an entry for each input that was changed. */
  readonly trail: readonly TrailEntry[];
  /** Those entries alone. */
  readonly entries: readonly TrailEntry[];
  /** What was changed besides inputs. */
  readonly findings: readonly Finding[];
}

export function changedSince(
  { content, model, match, cells }: FilledIn,
  written: AsWritten,
  taker: Taker,
): Since {
  const changes = changesOf(model, content, cells, written.inputs, taker);
  // who takes in other changes does not answer for those before
  const added = changes.length > 0 ? changes : namings(model, written.trail, taker);
  const trail = appended(written.trail, added);
  return {
    trail,
    entries: trail.slice(written.trail.length),
    findings: changedBesideInputs({ content, model, match }),
  };
}

/** Throws JobError where there are faults. */
export function refuse(file: string, faults: readonly string[]): void {
  if (faults.length === 0) return;
  throw new JobError("workbook-inputs", `The workbook ${file} cannot be taken in:`, faults);
}
