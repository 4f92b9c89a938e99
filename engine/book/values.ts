import type { Value } from "../formula/value.js";
import type { JobRecord } from "../job/record.js";
import { inputValues, type Missing } from "../job/values.js";
import type { Model } from "../template/model.js";
import { fillBook } from "./fill.js";
import type { OfficeBook } from "./office-book.js";

/**
 * The list of values of a job before calculation: inputs (as given, or their default),
 * published figures and the office book's rows, by the index of the cell; formula cells
 * are null. Throws JobError for a missing input, an unknown choice or a book that lacks a table.
 */
export function valuesOf(
  model: Model,
  job: JobRecord,
  book: OfficeBook,
  missing?: Missing,
): Value[] {
  const values = inputValues(model, job, book, missing);
  fillBook(model, values, book);
  return values;
}
