import { open as openFile, stat } from "node:fs/promises";
import { loadJob } from "../book/load-job.js";
import { calculateFast } from "../evaluate/calculate-fast.js";
import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import type { OpenedJob } from "./opened-job.js";

export type { OpenedJob } from "./opened-job.js";

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
  if (!(await isWorkbook(file))) return openRecord(file, templates, office, evaluate);
  // a record needs nothing of what reads workbooks
  const { openWorkbook } = await import("./open-workbook.js");
  return openWorkbook(file, templates);
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
