import { RillbookError } from "../errors.js";
import { templateMark } from "../template/mark.js";
import type { Template } from "../template/template.js";

/** What a workbook says of a template of an office's own. */
interface Marked {
  readonly templateFile?: string;
  readonly templateMark?: string;
}

/**
 * A workbook that was written with a template of an office's own is read by that one, and not by what its file has become.
 * Throws RillbookError.
 */
export function mustBeAsWritten(
  template: Template,
  { templateFile, templateMark: mark }: Marked,
  file: string,
): void {
  if (mark === undefined || mark === templateMark(template)) return;
  throw new RillbookError(
    "template-changed",
    `${file} was written with ${template.name} ${template.version} of the file ${templateFile} as it was then (mark ${mark.slice(0, 12)}); the one given calculates otherwise (mark ${templateMark(template).slice(0, 12)}). Give the file as it was then. A change of figures is a new version: keep the old one beside it.`,
  );
}
