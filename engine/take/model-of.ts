import { RillbookError } from "../errors.js";
import { systemFor, templateFor } from "../job/read.js";
import { mustBeAsWritten } from "../job/same-template.js";
import type { Model } from "../template/model.js";
import { modelOf } from "../template/models.js";
import type { Template } from "../template/template.js";
import { identityProperties, type WorkbookIdentity } from "../workbook/match/identity.js";
import type { WorkbookContent } from "../workbook/read/content.js";

/** The model that a workbook was written from. Throws RillbookError for a foreign one, and for one that counts dates from 1904. */
export function modelOfWorkbook(
  content: WorkbookContent,
  identity: WorkbookIdentity,
  templates: readonly Template[],
  file: string,
): Model {
  const lacking = (["template", "version", "units"] as const).find(
    (key) => identity[key] === undefined,
  );
  if (lacking !== undefined) {
    throw new RillbookError(
      "workbook-foreign",
      `${file} does not say that rillbook wrote it: the custom property "${identityProperties[lacking]}" is missing. Use a workbook written by "rillbook bid", saved as .xlsx with its properties.`,
    );
  }
  const template = templateFor(identity.template, identity.version, templates, file);
  mustBeAsWritten(template, identity, file);
  const model = modelOf(template, systemFor(identity.units, file));
  if (content.date1904) {
    throw new RillbookError(
      "workbook-dates",
      `${file} counts dates from 1904, but its formulas are written for dates from 1900. Turn that setting off in the spreadsheet program, look at the dates, and save again.`,
    );
  }
  return model;
}
