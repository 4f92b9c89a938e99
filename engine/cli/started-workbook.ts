import { identityOf } from "../book/identity-of.js";
import { logoOf } from "../book/logo.js";
import type { OfficeBook } from "../book/office-book.js";
import type { Value } from "../formula/value.js";
import type { JobRecord } from "../job/record.js";
import type { Model } from "../template/model.js";
import { withLogo } from "../workbook/pictures/logo.js";
import { writeWorkbook } from "../workbook/write/write.js";
import type { Context } from "./context.js";
import { withJudge } from "./with-judge.js";

/** A new job with what its cells hold so far. */
interface Started {
  readonly model: Model;
  readonly job: JobRecord;
  readonly book: OfficeBook;
  readonly given: readonly Value[];
}

/** The workbook of a new job, to be filled in. Throws RillbookError where the evaluators differ. */
export function workbookOf(
  context: Context,
  { model, job, book, given }: Started,
  office: string | undefined,
): Promise<Uint8Array> {
  return withJudge(context, async (calculate) => {
    const { values, agreed } = calculate(model, given);
    const logo = office === undefined ? undefined : await logoOf(model, given, office);
    const bytes = await writeWorkbook(model, values, identityOf({ model, job, book }));
    await agreed;
    return withLogo(bytes, model, logo);
  });
}
