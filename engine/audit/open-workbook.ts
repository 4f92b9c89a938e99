import { RillbookError } from "../errors.js";
import { mustBeAsWritten } from "../job/same-template.js";
import type { Template } from "../template/template.js";
import { matchWorkbook } from "../workbook/match/match.js";
import { toldIdentity } from "../workbook/match/told-identity.js";
import { readTrailSheet } from "../workbook/match/trail-sheet.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import { modelFor } from "./identity.js";
import type { OpenedJob } from "./opened-job.js";
import { recalculated } from "./recalculate.js";

/** Opens a workbook with the inputs and prices that it holds; its figures are calculated anew. Throws RillbookError. */
export async function openWorkbook(
  file: string,
  templates: readonly Template[],
): Promise<OpenedJob> {
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
