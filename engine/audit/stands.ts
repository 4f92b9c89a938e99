import type { Template } from "../template/template.js";
import { matchWorkbook } from "../workbook/match/match.js";
import { toldIdentity } from "../workbook/match/told-identity.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { checkFormulas } from "./formulas.js";
import { modelFor } from "./identity.js";
import { recalculated } from "./recalculate.js";

/**
 * Does a bid stand, by what its cells hold: calculated anew, since libraries drop stored results, and formulas that were
 * changed by what they show? False for a workbook whose template is not known.
 *
 * @param name the cell that says whether a bid stands
 */
export function stands(
  content: WorkbookContent,
  templates: readonly Template[],
  name = "bid_stands",
): boolean {
  const model = modelFor(toldIdentity(content).identity, templates);
  const cell = "cells" in model ? model.byId.get(name) : undefined;
  if (!("cells" in model) || cell === undefined) return false;
  const subject = { content, model, match: matchWorkbook(content, model) };
  const { changed } = checkFormulas(subject);
  return recalculated(subject, changed).followed[cell.index] === true;
}
