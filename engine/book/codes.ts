import { suggestion } from "../formula/suggest.js";
import { inputPlanOf, type PlannedInput } from "../job/input-plan.js";
import { JobError } from "../job/job-error.js";
import type { JobRecord } from "../job/record.js";
import { givenFor } from "../job/validate.js";
import { codeHolders } from "../template/code-holders.js";
import type { InputDeclaration } from "../template/declare.js";
import type { Model } from "../template/model.js";
import { codeOf } from "./fill.js";
import type { OfficeBook } from "./office-book.js";

/**
 * Looks whether the codes that a job record gives are in the office book: those chosen from a
 * column of the book, and those by which its rows are copied. The template's own codes are left
 * to the checks of the bid. Throws JobError with row, code and the nearest that there is.
 */
export function mustBeInBook(model: Model, job: JobRecord, book: OfficeBook): void {
  const columns = columnsByInput(model);
  const faults = inputPlanOf(model).inputs.flatMap((input) => {
    const { cell } = input;
    const given = givenFor(job, cell.name, cell.row);
    const column = columns.get(cell.name);
    if (column === undefined || typeof given !== "string" || given === "") return [];
    if (isTemplates(model, input, given)) return [];
    const known = (book.tables[column.from] ?? []).map((row) => String(row[column.key] ?? ""));
    if (known.some((one) => codeOf(one) === codeOf(given))) return [];
    return [
      `inputs.${cell.id} (${cell.declaration.label}) is "${given}", which is not in the ${column.from} of the office book "${book.name}".${suggestion(given, known)} Correct it, or add it to the book.`,
    ];
  });
  if (faults.length === 0) return;
  throw new JobError("code-unknown", `The job record ${job.job} cannot be used:`, faults);
}

export interface BookColumn {
  readonly from: string;
  readonly key: string;
}

/** The column of the office book in which an input's value must be, by the input's name. */
export function columnsByInput(model: Model): Map<string, BookColumn> {
  const found = new Map<string, BookColumn>();
  for (const { block } of model.tables.values()) {
    for (const name of codeHolders(block, model.cells) ?? []) {
      if (block.from !== undefined) found.set(name, { from: block.from, key: "code" });
    }
  }
  for (const { cell } of inputPlanOf(model).inputs) {
    const { choices } = cell.declaration as InputDeclaration;
    if (typeof choices !== "string") continue;
    const [table = "", key = ""] = choices.split(".");
    const from = model.tables.get(table)?.block.from;
    if (from !== undefined) found.set(cell.name, { from, key });
  }
  return found;
}

/** Is it a code that the template itself gives this input, in whatever row? */
function isTemplates(model: Model, { usual, table, key = "" }: PlannedInput, given: string) {
  const rows = table === undefined ? [] : (model.tables.get(table)?.block.data ?? []);
  return usual === given || rows.some((row) => row[key] === given);
}
