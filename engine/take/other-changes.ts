import type { Finding, Subject } from "../audit/index.js";
import {
  checkFormulas,
  checkPlaces,
  checkPublished,
  checkValues,
  checkWrittenPrices,
  recalculated,
} from "../audit/index.js";

/**
 * What was changed in a workbook besides its inputs: formulas, published figures, prices, names,
 * rows, and stored results that do not follow. Each means that the workbook shows other figures
 * than the job taken in. The audit looks at more: labels, sheets, hidden things, failed checks.
 */
export function changedBesideInputs(subject: Subject): Finding[] {
  const formulas = checkFormulas(subject);
  const values = recalculated(subject, formulas.changed);
  return [
    ...checkPlaces(subject),
    // a formula typed into an input is told in the note of its entry
    ...formulas.findings.filter(({ code, grade }) => code !== "input-formula" || grade === "wrong"),
    ...checkPublished(subject),
    ...checkWrittenPrices(subject),
    ...checkValues(subject, formulas.changed, values),
  ].filter(({ grade }) => grade !== "to know");
}
