import type { Value } from "../formula/value.js";
import type { Cell } from "../template/model.js";
import type { MatchedCell } from "../workbook/match/result.js";
import { readTrailSheet, type WorkbookTrail } from "../workbook/match/trail-sheet.js";
import { changedSince } from "./changed-givens.js";
import { writeAgain } from "./cures.js";
import type { Finding } from "./finding.js";
import { agree, formulaIn, heldBy, placeOf, type Subject, saidIn } from "./subject.js";
import { heldAs } from "./trail.js";

/** A price that is not the office book's, or no longer what it was when the workbook was written. */
export interface ChangedPrice {
  readonly cell: Cell;
  readonly place: MatchedCell;
  readonly now: Value;
  /** By the office book where it is given, else by the list on sheet Trail. */
  readonly before: Value;
  /** By that list, where the workbook has one. */
  readonly written?: Value;
}

/** What tells the prices as they were. */
export const sourceOf = (book: readonly Value[] | undefined): string =>
  book === undefined ? "sheet Trail" : "the office book";

/**
 * The prices that were changed, each once.
 *
 * @param book the values that the office book gives, where one is given
 */
export function changedPrices(
  subject: Subject,
  trail: WorkbookTrail | undefined,
  book?: readonly Value[],
): ChangedPrice[] {
  const { model, match } = subject;
  const since = trail === undefined ? [] : changedSince(subject, trail.written, "book");
  const written = new Map(since.map(({ cell, then }) => [cell, heldAs(cell, then)]));
  return model.cells.flatMap((cell): ChangedPrice[] => {
    const place = cell.declaration.kind === "book" ? match.at.get(cell.id) : undefined;
    if (place === undefined || formulaIn(cell, place.cell) !== undefined) return [];
    const now = heldBy(cell, place.cell.value);
    const then = written.get(cell);
    const before = book === undefined ? then : (book[cell.index] ?? null);
    if (before === undefined || (then === undefined && agree(now, before))) return [];
    return [{ cell, place, now, before, ...(then === undefined ? {} : { written: then }) }];
  });
}

/** The prices of which the workbook itself says that they were changed since it was written. */
export const checkWrittenPrices = (subject: Subject): Finding[] =>
  pricesTold(subject, changedPrices(subject, readTrailSheet(subject.content)));

/** One finding for each changed price, with what it `moves`. */
export function pricesTold(
  { model }: Subject,
  prices: readonly ChangedPrice[],
  book?: readonly Value[],
  moves: ReadonlyMap<Cell, string> = new Map(),
): Finding[] {
  return prices.map(({ cell, place, now, before, written }) => {
    const is = saidIn(model, cell, now, before);
    const was =
      written === undefined
        ? ""
        : `; when the workbook was written it was ${saidIn(model, cell, written, now)}`;
    const right = saidIn(model, cell, before, now);
    const isBooks = agree(now, before);
    return {
      grade: "wrong",
      code: "price-changed",
      where: placeOf(place),
      name: cell.id,
      found: `${is}${was}${isBooks ? "" : (moves.get(cell) ?? "")}`,
      expected: isBooks
        ? `the same on sheet Trail: the office book has ${right}`
        : book === undefined
          ? `${right}, from the office book as sheet Trail tells it`
          : `${right}, as the office book has it`,
      advice: isBooks ? "Compare with the job record, whose trail counts." : bringBack,
    };
  });
}

const bringBack = `${writeAgain} --office office-book.json, with the office book that it was made with. If the new price is right, change it in the office book first.`;

/** A stored result that does not follow, as it is told as long as prices are changed: to recalculate would bring them in. */
export const pricesFirst = (one: Finding): Finding => ({
  ...one,
  expected: one.expected.replace(
    "the workbook's own inputs",
    "the workbook's own inputs and the changed prices",
  ),
  advice:
    "First bring the changed prices back, as told with each: recalculated before that, the workbook shows what follows from them, also to the customer.",
});
