import type { Identity } from "../workbook/write/identity.js";
import type { LoadedJob } from "./load-job.js";

/** What the workbook of a job says of itself. */
export function identityOf({
  model,
  job,
  book,
}: Pick<LoadedJob, "model" | "job" | "book">): Identity {
  return {
    job: job.job,
    template: model.template.name,
    version: model.template.version,
    units: model.system,
    ...(job.about === undefined ? {} : { about: job.about }),
    book: book.name,
    bookAsOf: book.asOf,
    bookMark: book.mark,
    ...(job.office === undefined ? {} : { office: job.office }),
    ...(job.trail === undefined ? {} : { trail: job.trail }),
  };
}
