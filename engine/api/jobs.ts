import type { LoadedJob } from "../book/load-job.js";
import type { OfficeBook } from "../book/office-book.js";
import type { JobRecord } from "../job/record.js";
import type { Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import type { UnitSystem } from "../units/quantity.js";
import { withKeptModels } from "./models.js";

/** How a job is opened. */
export interface JobOptions {
  /** The office book: what was read, or the path of one, instead of the one that the record names. */
  readonly office?: OfficeBook | string;
  /** `true`: inputs that are missing stay blank, and the bid does not stand. Without it they are refused. */
  readonly incomplete?: boolean;
}

/**
 * A new job record for a compiled template: what a job must give, still blank, with a guide to what each
 * input means. Fill in `inputs`, and keep it as JSON.
 *
 * @param job the number or name of the job
 * @param office path of the office book, from the folder of the record
 */
export async function newJob(model: Model, job: string, office?: string): Promise<JobRecord> {
  const { newJob: made } = await import("../job/start.js");
  return made(model, job, office);
}

/**
 * Opens a job: a record in memory, or the path of one. It is checked against its template, and the office
 * book is filled in; without a book the starter book of the template stands in, whose prices are placeholders.
 * Rejects with RillbookError, which names each value, rule and what to do.
 *
 * @param templates those there are: the record names one of them, with its version
 */
export async function openJob(
  job: JobRecord | string,
  templates: readonly Template[],
  { office, incomplete }: JobOptions = {},
): Promise<LoadedJob> {
  await withKeptModels();
  const { loadJob, jobOf } = await import("../book/load-job.js");
  const missing = incomplete ? "left blank" : "refused";
  if (typeof job === "string") return loadJob(job, templates, office, missing);
  return jobOf(JSON.stringify(job), templates, `job ${job.job}`, office, missing);
}

/** Reads and checks an office book, .xlsx or .json. Rejects with RillbookError: sheet, row, column, value, rule. */
export async function readOfficeBook(path: string, template: Template): Promise<OfficeBook> {
  const [{ readOfficeBook: read }, { layoutOf }] = await Promise.all([
    import("../book/read.js"),
    import("../template/office-layout.js"),
  ]);
  return read(path, layoutOf(template));
}

/** The office book that comes with a template: its rules, and prices that are placeholders. */
export async function starterBook(template: Template, units: UnitSystem): Promise<OfficeBook> {
  const { starterBook: made } = await import("../book/starter.js");
  return made(template, units);
}
