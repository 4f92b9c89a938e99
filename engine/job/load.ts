import { dirname, resolve } from "node:path";
import { RillbookError } from "../errors.js";
import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import { modelOf } from "../template/models.js";
import type { Template } from "../template/template.js";
import type { PriceBook } from "./price-book.js";
import { readJob } from "./read.js";
import { readPriceBook } from "./read-price-book.js";
import type { JobRecord } from "./record.js";
import { validateJob } from "./validate.js";
import { valuesOf } from "./values.js";

/** A job with all that its calculation needs. */
export interface LoadedJob {
  readonly model: Model;
  readonly job: JobRecord;
  readonly book: PriceBook;
  /** Inputs, published and price-book values; formula cells still empty. */
  readonly given: Value[];
}

/**
 * Reads a job record, checks it, and reads the price book it names (or the one given).
 * Throws RillbookError with what is wrong.
 */
export async function loadJob(
  file: string,
  templates: readonly Template[],
  prices?: string,
): Promise<LoadedJob> {
  const raw = await readJob(file, templates);
  const model = modelOf(raw.template, raw.units);
  const job = validateJob(model, raw.record, file);
  const book = await readPriceBook(priceFile(file, job, prices), raw.template.prices ?? []);
  return { model, job, book, given: valuesOf(model, job, book) };
}

function priceFile(file: string, job: JobRecord, asked: string | undefined): string {
  if (asked !== undefined) return asked;
  if (job.prices !== undefined) return resolve(dirname(file), job.prices);
  throw new RillbookError(
    "prices-missing",
    `${file} names no price book. Add "prices": "path" to it, or give --prices <file>.`,
  );
}
