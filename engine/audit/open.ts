import { open as openFile, stat } from "node:fs/promises";
import { loadJob } from "../book/load-job.js";
import { RillbookError } from "../errors.js";
import { calculateFast } from "../evaluate/calculate-fast.js";
import type { Value } from "../formula/value.js";
import { mustBeAsWritten } from "../job/same-template.js";
import type { TrailEntry } from "../job/trail/entry.js";
import type { Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import { matchWorkbook } from "../workbook/match/match.js";
import type { WorkbookMatch } from "../workbook/match/result.js";
import { toldIdentity } from "../workbook/match/told-identity.js";
import { readTrailSheet } from "../workbook/match/trail-sheet.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import { modelFor } from "./identity.js";
import { recalculated } from "./recalculate.js";

/** A job from a record or a workbook, calculated by the template's formulas. */
export interface OpenedJob {
  readonly source: "record" | "workbook";
  readonly job: string;
  readonly model: Model;
  readonly values: readonly Value[];
  readonly trail: readonly TrailEntry[];
  /** The office book: `name, as of date`. */
  readonly book: string;
  /** What a workbook shows, where it is one. */
  readonly shown?: readonly Value[];
  /** Where the cells of a workbook stand, by their ids. */
  readonly at?: WorkbookMatch["at"];
  /** The paths of all that was read. */
  readonly files: readonly string[];
}

/**
 * Opens a job record or a workbook, whichever the file is. Inputs and prices of a workbook are
 * those that it holds; its figures are calculated anew.
 * Throws RillbookError for a file that cannot be read or whose template is not known.
 *
 * @param office an office book for a job record, instead of the one it names
 * @param evaluate how a record is calculated: `calculate` has the judge check it, which takes seconds
 */
export async function openJob(
  file: string,
  templates: readonly Template[],
  office?: string,
  evaluate: Evaluate = calculateFast,
): Promise<OpenedJob> {
  return (await isWorkbook(file))
    ? openWorkbook(file, templates)
    : openRecord(file, templates, office, evaluate);
}

type Evaluate = (model: Model, given: readonly Value[]) => readonly Value[];

async function openRecord(
  file: string,
  templates: readonly Template[],
  office: string | undefined,
  evaluate: Evaluate,
): Promise<OpenedJob> {
  const { model, job, book, given, files } = await loadJob(file, templates, office);
  return {
    source: "record",
    job: job.job,
    model,
    values: evaluate(model, given),
    trail: job.trail ?? [],
    book: `${book.name}, as of ${book.asOf}`,
    files,
  };
}

async function openWorkbook(file: string, templates: readonly Template[]): Promise<OpenedJob> {
  const content = await readWorkbookFile(file);
  const { identity } = toldIdentity(content);
  const model = modelFor(identity, templates);
  if (!("cells" in model)) {
    throw new RillbookError(
      "template-unknown",
      `${file}: its template cannot be told: found ${model.found}, expected ${model.expected}. ${model.advice}`,
    );
  }
  mustBeAsWritten(model.template, identity, file);
  const match = matchWorkbook(content, model);
  const { byTemplate, shown } = recalculated({ content, model, match }, new Set());
  return {
    source: "workbook",
    job: identity.job ?? "(not named)",
    model,
    values: byTemplate,
    trail: readTrailSheet(content)?.entries ?? [],
    book: `${identity.book ?? "(not named)"}, as of ${identity.bookAsOf ?? "(unknown)"}`,
    shown,
    at: match.at,
    files: [file],
  };
}

/** A workbook is a zip, whatever it is called; what only looks like one is refused in its own words. */
async function isWorkbook(file: string): Promise<boolean> {
  if (/\.xls[xm]?$/i.test(file)) return true;
  // a pipe would be waited for; what it is is told where it is read
  const state = await stat(file).catch(() => undefined);
  if (!state?.isFile()) return false;
  const handle = await openFile(file).catch(() => undefined);
  if (handle === undefined) return false;
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(2), 0, 2, 0).catch(() => ({
      buffer: Buffer.alloc(0),
      bytesRead: 0,
    }));
    return bytesRead === 2 && buffer.toString("latin1") === "PK";
  } finally {
    await handle.close();
  }
}
