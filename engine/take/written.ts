import { RillbookError } from "../errors.js";
import { carriedOffice } from "../job/carried-office.js";
import { inputPlanOf } from "../job/input-plan.js";
import type { JobRecord } from "../job/record.js";
import { canonicalJson, sha256 } from "../job/trail/canonical.js";
import type { TrailEntry } from "../job/trail/entry.js";
import { markOf, recorded } from "../job/trail/inputs.js";
import { verifyTrail } from "../job/trail/verify.js";
import { valuesAsGiven } from "../job/values.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import type { Model } from "../template/model.js";
import type { WorkbookIdentity } from "../workbook/match/identity.js";
import { readTrailSheet } from "../workbook/match/trail-sheet.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { propertiesLost } from "./properties-lost.js";

/** The inputs and the trail with which a workbook was written. */
export interface AsWritten {
  readonly inputs: ReadonlyMap<string, InputValue | null>;
  readonly trail: readonly TrailEntry[];
  /** What the office book said then. */
  readonly office: OfficeValues;
  /** Prices and rules by id, as the workbook was written; their mark says whether the list is still the one written. */
  readonly prices: ReadonlyMap<string, InputValue | null>;
  readonly pricesHold: boolean;
}

/**
 * What shows that trail and inputs are as they were written: the workbook's own properties; the job record it was
 * written from, to be held against it by `mustStemFrom`; or nothing.
 */
export type Held = "properties" | "record" | "nothing";

/**
 * What the Trail sheet says of the time of writing. Throws RillbookError where the sheet, its
 * chain or its list of inputs is not as it was written: nobody could tell then what was changed.
 */
export function asWritten(
  model: Model,
  content: WorkbookContent,
  identity: WorkbookIdentity,
  file: string,
  by: Held = "properties",
): AsWritten {
  const sheet = readTrailSheet(content);
  if (sheet === undefined) throw broken(file, "The sheet Trail is missing.");
  const [unread] = sheet.faults;
  if (unread !== undefined) throw broken(file, unread);
  if (by === "nothing") throw propertiesLost(file, model.template);
  const { trailHead, inputsMark } = identity;
  if (by === "properties" && (trailHead === undefined || inputsMark === undefined)) {
    throw broken(file, "The custom properties no longer say how the trail ends.");
  }
  const [fault] = verifyTrail(sheet.entries, trailHead);
  if (fault !== undefined) throw broken(file, fault.sentence);
  const inputs = new Map(
    inputPlanOf(model).inputs.map(({ cell }) => [cell.id, sheet.written.get(cell.id) ?? null]),
  );
  const given = [...inputs].filter(([, value]) => value !== null);
  const mark = sha256(canonicalJson(Object.fromEntries(given)));
  if (by === "properties" && mark !== inputsMark) {
    throw broken(file, "The list of inputs as written was changed.");
  }
  const office = carriedOffice(model, (id) => sheet.written.get(id));
  const prices = pricesAmong(model, sheet.written);
  const pricesHold = markOf(model, "book", ({ id }) => prices.get(id)) === identity.pricesMark;
  return { inputs, trail: sheet.entries, office, prices, pricesHold };
}

const pricesAmong = (model: Model, written: AsWritten["prices"]): AsWritten["prices"] =>
  new Map(
    model.cells
      .filter(({ declaration }) => declaration.kind === "book")
      .map(({ id }) => [id, written.get(id) ?? null]),
  );

/**
 * The workbook must have been written from this record, or from a later state of it. Throws
 * RillbookError where the record has gone its own way since.
 */
export function mustStemFrom(
  model: Model,
  written: AsWritten,
  record: JobRecord,
  file: string,
  recordFile: string,
): void {
  const own = record.trail ?? [];
  const apart = own.findIndex(({ hash }, i) => written.trail[i]?.hash !== hash);
  if (apart >= 0) {
    throw new RillbookError(
      "trails-part",
      `The trail of ${recordFile} has entry ${apart + 1} (${own[apart]?.input}) that the workbook ${file} does not have: the record was changed after the workbook was written. Write a fresh workbook and make the changes there, or take this one into another record.`,
    );
  }
  const before = new Map(written.inputs);
  for (const { input, old } of written.trail.slice(own.length).reverse()) before.set(input, old);
  const values = valuesAsGiven(model, record, written.office);
  const differing = inputPlanOf(model).inputs.find(
    ({ cell }) => recorded(cell, values[cell.index]) !== before.get(cell.id),
  );
  if (differing === undefined) return;
  const { cell } = differing;
  const said = (value: unknown) => (value === null ? "blank" : JSON.stringify(value));
  throw new RillbookError(
    "record-changed",
    `${cell.id} is ${said(recorded(cell, values[cell.index]))} in ${recordFile}, but was ${said(before.get(cell.id) ?? null)} when the workbook ${file} was written: the record was changed since, past its trail. Write a fresh workbook and make the changes there, or take this one into another record.`,
  );
}

const broken = (file: string, what: string): RillbookError =>
  new RillbookError(
    "trail-broken",
    `The trail of the workbook ${file} does not hold, so nobody can tell what was changed in it, and nothing is taken in. ${what} Use a copy whose sheet Trail and properties are whole.`,
  );
