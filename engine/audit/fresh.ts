import { calculateFast } from "../evaluate/calculate-fast.js";
import type { Value } from "../formula/value.js";
import type { WorkbookIdentity } from "../workbook/match/identity.js";
import { readTrailSheet } from "../workbook/match/trail-sheet.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { readBack } from "../workbook/write/read-back.js";
import type { Subject } from "./subject.js";
import { valuesAsWritten } from "./trail.js";

/** The workbook as it would be written from the same inputs and values. */
export function freshlyWritten(
  { content, model }: Subject,
  identity: WorkbookIdentity,
  values: readonly Value[],
): WorkbookContent {
  const { job = "", book = "", bookAsOf = "", bookMark = "", about, office } = identity;
  const written = {
    job,
    template: model.template.name,
    version: model.template.version,
    units: model.system,
    book,
    bookAsOf,
    bookMark,
    ...(about === undefined ? {} : { about }),
    ...(office === undefined ? {} : { office }),
    trail: readTrailSheet(content)?.entries ?? [],
  };
  return readBack(model, values, written, content.look !== undefined);
}

/**
 * The workbook as it was when it was written, from the inputs and the rows of the office book that its sheet Trail
 * tells; undefined where it has no such sheet.
 */
export function asOnceWritten(
  subject: Subject,
  identity: WorkbookIdentity,
): WorkbookContent | undefined {
  const { content, model } = subject;
  const trail = readTrailSheet(content);
  if (trail === undefined) return undefined;
  const told = valuesAsWritten(model, trail);
  const given = model.cells.map((cell) => cell.fixed ?? told[cell.index] ?? null);
  return freshlyWritten(subject, identity, calculateFast(model, given));
}
