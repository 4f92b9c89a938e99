import { stat } from "node:fs/promises";
import { basename, dirname, extname, resolve } from "node:path";
import { RillbookError } from "../errors.js";
import type { Value } from "../formula/value.js";
import { type RawJob, rawJob, readJob } from "../job/read.js";
import type { JobRecord } from "../job/record.js";
import { validateJob } from "../job/validate.js";
import type { Missing } from "../job/values.js";
import type { Model } from "../template/model.js";
import { modelOf } from "../template/models.js";
import { layoutOf } from "../template/office-layout.js";
import type { Template } from "../template/template.js";
import { mustBeInBook } from "./codes.js";
import type { OfficeBook } from "./office-book.js";
import { readOfficeBook } from "./read.js";
import { starterBook } from "./starter.js";
import { valuesOf } from "./values.js";

/** A job with all that its calculation needs. */
export interface LoadedJob {
  readonly model: Model;
  readonly job: JobRecord;
  readonly book: OfficeBook;
  /** Inputs, published and office-book values; formula cells still empty. */
  readonly given: Value[];
  /** The paths of all that was read. */
  readonly files: readonly string[];
}

/**
 * Reads a job record, checks it, and reads the office book it names (or the one given). Where there is
 * none, the starter book stands for it, whose prices keep the bid from standing.
 * Throws RillbookError with what is wrong.
 *
 * @param office an office book, or the path of one
 */
export async function loadJob(
  file: string,
  templates: readonly Template[],
  office?: string | OfficeBook,
  missing?: Missing,
): Promise<LoadedJob> {
  const loaded = await loadedFrom(await readJob(file, templates), office, missing);
  return { ...loaded, files: [file, ...loaded.files] };
}

/** The same for the text of a record; `name` tells it in errors, and what it names lies beside that. */
export async function jobOf(
  text: string,
  templates: readonly Template[],
  name: string,
  office?: string | OfficeBook,
  missing?: Missing,
): Promise<LoadedJob> {
  return loadedFrom(rawJob(text, templates, name), office, missing);
}

async function loadedFrom(
  raw: RawJob,
  office: string | OfficeBook | undefined,
  missing: Missing | undefined,
): Promise<LoadedJob> {
  const model = modelOf(raw.template, raw.units);
  const job = validateJob(model, raw.record, raw.file);
  const { book, files } = await bookFor(raw, job, office);
  const given = valuesOf(model, job, book, missing);
  mustBeInBook(model, job, book);
  return { model, job, book, given, files };
}

async function bookFor(
  { file, template, units }: RawJob,
  job: JobRecord,
  office: string | OfficeBook | undefined,
): Promise<{ book: OfficeBook; files: string[] }> {
  if (typeof office === "object") return { book: office, files: [] };
  const path = await bookFileOf(file, job, office);
  if (path === undefined) return { book: starterBook(template, units), files: [] };
  return { book: await readOfficeBook(path, layoutOf(template)), files: [path] };
}

async function bookFileOf(
  file: string,
  job: JobRecord,
  asked: string | undefined,
): Promise<string | undefined> {
  const path = asked ?? (job.office === undefined ? undefined : resolve(dirname(file), job.office));
  if (path === undefined) return undefined;
  const found = await stat(path).catch(() => undefined);
  if (found !== undefined) return path;
  throw new RillbookError(
    "office-missing",
    `The office book ${path} does not exist. Give it where it lies: --office <file>. Only where there is none yet: write one with "rillbook office --new ${basename(path, extname(path))}.xlsx", or take "office" out of the record to begin with the starter book; both hold placeholders, which are other prices than those that the job had.`,
  );
}

/**
 * The office book that a record names, for commands that can do without it: undefined where the record or
 * the book cannot be read, which is told where they are needed.
 */
export async function officeBeside(
  file: string,
  templates: readonly Template[],
): Promise<OfficeBook | undefined> {
  try {
    const { record, template } = await readJob(file, templates);
    const { office } = record as Partial<JobRecord>;
    if (typeof office !== "string") return undefined;
    return await readOfficeBook(resolve(dirname(file), office), layoutOf(template));
  } catch (error) {
    if (error instanceof RillbookError) return undefined;
    throw error;
  }
}
