import type { Value } from "../formula/value.js";
import { failedChecks } from "../job/failed-checks.js";
import { homeOf } from "../template/model.js";
import type { Finding } from "./finding.js";
import { placeOf, type Subject } from "./subject.js";

/** The bid's own checks that fail by the template's formulas: expired quotes and all else. */
export function checkChecks({ model, match }: Subject, byTemplate: readonly Value[]): Finding[] {
  return failedChecks(model, byTemplate).map(({ cell, level, message }) => {
    // a table's last columns may stand among the workings, where nobody reads
    const home = homeOf(model, cell);
    const place = match.at.get(cell.id);
    return {
      grade: level === "must" ? "wrong" : "to know",
      code: "check-failed",
      where: place === undefined ? cell.id : placeOf(place),
      name: cell.id,
      found: `the check "${cell.declaration.label}"${home === cell.sheet ? "" : ` of sheet ${home}`} fails: ${message}`,
      expected: "a check that holds",
      advice: "Change the inputs until it holds, or say in the bid why it need not.",
    };
  });
}
