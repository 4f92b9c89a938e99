import { fillBook } from "../book/fill.js";
import type { OfficeBook } from "../book/office-book.js";
import type { Value } from "../formula/value.js";
import { type Sections, sectionsOf } from "../seal/index.js";
import type { Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import type { WorkbookIdentity } from "../workbook/match/identity.js";
import { matchWorkbook } from "../workbook/match/match.js";
import { toldIdentity } from "../workbook/match/told-identity.js";
import { readTrailSheet } from "../workbook/match/trail-sheet.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { changedPrices, pricesFirst, pricesTold, sourceOf } from "./changed-prices.js";
import { withPath } from "./cures.js";
import { checkChecks } from "./failing-checks.js";
import { counted, faultyInputs, followsFromFaulty } from "./faulty-inputs.js";
import { type Finding, isOfLook } from "./finding.js";
import { checkPublished } from "./fixed-figures.js";
import { checkFormulas, withFigures } from "./formulas.js";
import { asOnceWritten, freshlyWritten } from "./fresh.js";
import { goneSheets, readsGone, withFollowing } from "./gone-sheets.js";
import { type Changes, type Headline, headlineOf } from "./headline.js";
import { hidesRows } from "./hidden-lines.js";
import { checkProperties, checkTemplate, modelFor } from "./identity.js";
import { checkLook } from "./look/check.js";
import { isRefitted } from "./look/page.js";
import { repeatsOthers } from "./look/repeated.js";
import { hasLowRows } from "./look/spaces.js";
import { lostProperties, needsProperty } from "./lost-properties.js";
import { checkPlaces } from "./moved-cells.js";
import { moneyOf, movedByNames, movedPrices, withBefore } from "./moved-price.js";
import { inOrder } from "./order.js";
import { checkSurroundings } from "./other-cells.js";
import { type Recalculation, recalculated, staleValues } from "./recalculate.js";
import { checkSeal, type SealState, sealState } from "./seal.js";
import { sealedContent } from "./sealed-content.js";
import { sheetPairs } from "./sheet-pairs.js";
import { staleAsOne } from "./stale.js";
import { namesFirst, readAtHome, takenFor, withMoves } from "./stray-names.js";
import type { Subject } from "./subject.js";
import { checkMarks, checkTrail } from "./trail.js";
import { untoldInputs } from "./untold-inputs.js";
import { byWeight } from "./weight.js";

export interface Audit {
  readonly identity: WorkbookIdentity;
  /** Absent where the template is not known. */
  readonly model?: Model;
  /** The gravest first, as they are told; changed inputs before what else is doubtful. */
  readonly findings: readonly Finding[];
  /** Nothing was found but what is only "to know". */
  readonly clean: boolean;
  readonly headline: readonly Headline[];
  /** The inputs and prices that `before` of the headline has as they were. */
  readonly changes: Changes;
  readonly seal: SealState;
  /** What a seal would stand over, worked out when it is asked for; absent where the template is not known. */
  readonly sections?: Sections;
}

/** What a workbook is held against, besides its template and its own trail. */
export interface AuditOptions {
  /** The office book, to hold each price against it; without it, prices are held against the list on sheet Trail. */
  readonly book?: OfficeBook | undefined;
  /** Fingerprint of the key that should have sealed the workbook. */
  readonly key?: string | undefined;
  /** The path of the workbook, for the commands that are named. */
  readonly file?: string;
}

/**
 * Looks at a workbook as it was read: whether its formulas, published figures, prices, names and
 * sheets are still those of its template, its stored results follow from its inputs, its inputs
 * are those of its trail, and its checks hold. Nothing in the workbook is trusted or run.
 *
 * Stored numbers may differ by 1e-9 of their size, texts and yes/no not at all; given numbers are
 * compared at 12 digits.
 */
export async function auditWorkbook(
  content: WorkbookContent,
  templates: readonly Template[],
  { book, key, file = "bid.xlsx" }: AuditOptions = {},
): Promise<Audit> {
  const { identity, lost } = toldIdentity(content);
  const model = modelFor(identity, templates);
  if (!("cells" in model)) {
    const seal = sealState(content, undefined);
    return { identity, findings: [model], clean: false, headline: [], changes: none, seal };
  }
  const { subject, stray } = readAtHome({ content, model, match: matchWorkbook(content, model) });
  const formulas = checkFormulas(subject);
  const values = recalculated(subject, formulas.changed);
  const fresh = freshlyWritten(subject, identity, values.followed);
  const pairs = sheetPairs(subject, fresh);
  // rows are as high, and pages as many, as the texts wanted that they were written with
  const faulty = faultyInputs(subject);
  const outgrown =
    faulty.findings.length > 0 ||
    pairs.some(hidesRows) ||
    hasLowRows(pairs) ||
    isRefitted(pairs) ||
    repeatsOthers(pairs, content, fresh);
  const once = outgrown ? asOnceWritten(subject, identity) : undefined;
  let made: Sections | undefined;
  const sections = () => {
    made ??= sectionsOf(model, sealedContent(subject, identity, values));
    return made;
  };
  const seal = sealState(content, sections);
  const trail = readTrailSheet(content);
  const untold = untoldInputs(subject, trail, values.byTemplate);
  const isThatBook = book !== undefined && identity.bookMark === book.mark;
  const booked = isThatBook ? valuesOfBook(subject, values, book) : undefined;
  const prices = changedPrices(subject, trail, booked);
  const looks = looksAgainst(subject, fresh, pairs, once);
  const asBefore = new Set(
    faulty.findings.length === 0 || once === undefined
      ? []
      : looksAgainst(subject, once).map(placeAndCode),
  );
  const stale = [...staleValues(subject, formulas.changed, values), ...looks.filter(isStale)];
  const gone = goneSheets(subject);
  const bereft = stale.filter((one) => readsGone(gone, one)).length + formulas.bereft;
  let following = 0;
  const own = (one: Finding): boolean => {
    const follows = followsFromFaulty(faulty, one, asBefore.has(placeAndCode(one)));
    if (follows) following += one.names?.length ?? 1;
    return !follows;
  };
  const rest = [
    ...(lost ? [lostProperties] : checkProperties(identity)),
    ...checkTemplate(identity, model),
    ...withMoves(
      withFollowing(checkPlaces(subject), bereft),
      movedByNames(model, values.byTemplate, takenFor(stray)),
    ),
    ...withFigures(subject, formulas.each, values),
    ...checkPublished(subject),
    ...(book === undefined || isThatBook ? [] : [otherBook(identity, book)]),
    ...pricesTold(subject, prices, booked, movedPrices(model, values.byTemplate, prices)),
    ...untold.findings,
    ...[...checkTrail(subject, identity), ...checkMarks(subject, identity)].filter(
      (one) => !(lost && needsProperty(one)),
    ),
    ...staleAsOne(
      stale.filter((one) => !readsGone(gone, one)).filter(own),
      moneyOf(model).map(({ id }) => id),
    )
      .map((one) => (stray.length === 0 ? one : namesFirst(one)))
      .map((one) => (prices.length === 0 ? one : pricesFirst(one))),
    ...looks.filter((one) => !isStale(one)).filter(own),
    ...checkSeal(seal, key, trail?.entries ?? [], looks.some(isOfLook)),
    ...checkChecks(subject, values.byTemplate).filter(own),
  ];
  const findings = [...counted(faulty.findings, following), ...rest];
  const undone = [...untold.changes, ...prices];
  const before = undone.length === 0 ? undefined : withBefore(model, values.byTemplate, undone);
  const single = new Map(findings.map((one) => [`${one.code} ${one.where} ${one.found}`, one]));
  const sorted = inOrder(byWeight(model, withPath([...single.values()], file)));
  return {
    identity,
    model,
    findings: sorted,
    clean: sorted.every(({ grade }) => grade === "to know"),
    seal,
    get sections() {
      return sections();
    },
    headline: headlineOf(subject, values, before),
    changes: {
      inputs: untold.changes.length,
      prices: prices.length,
      source: sourceOf(booked),
    },
  };
}

const looksAgainst = (
  subject: Subject,
  written: WorkbookContent,
  pairs = sheetPairs(subject, written),
  once?: WorkbookContent,
): Finding[] => [
  ...checkSurroundings(subject, written, pairs, once),
  ...checkLook(subject, written, pairs, once),
];

const placeAndCode = ({ code, where }: Finding): string => `${code} ${where}`;

const none: Changes = { inputs: 0, prices: 0, source: "" };

const isStale = ({ code, grade }: Finding): boolean => code === "value-stale" && grade === "wrong";

const otherBook = (identity: WorkbookIdentity, book: OfficeBook): Finding => ({
  grade: "doubtful",
  code: "office-book",
  where: "custom properties",
  found: `prices of "${identity.book}", as of ${identity.bookAsOf}`,
  expected: `those of "${book.name}", as of ${book.asOf}, the office book given`,
  advice:
    "Write the bid again to bring the new prices in, or give the office book it was made with.",
});

function valuesOfBook({ model }: Subject, { shown }: Recalculation, book: OfficeBook): Value[] {
  const values = [...shown];
  fillBook(model, values, book);
  return values;
}
