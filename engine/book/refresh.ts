import type { Value } from "../formula/value.js";
import { inputPlanOf, type PlannedInput } from "../job/input-plan.js";
import { recorded } from "../job/trail/inputs.js";
import { bookCopyOf } from "../template/book-copy.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { Model } from "../template/model.js";
import { fillBook } from "./fill.js";
import type { OfficeBook } from "./office-book.js";

/**
 * The values of a job under another office book: its prices, and its rules where the job did not override
 * those of the book before. Rows that the office keeps as its own stay as the job has them, once it changed one.
 *
 * @param before what the book said with which the values came about
 */
export function underBook(
  model: Model,
  given: readonly Value[],
  before: OfficeValues,
  book: OfficeBook,
): Value[] {
  const values = [...given];
  const was = new Map(inputPlanOf(model, before).inputs.map((one) => [one.cell.index, one]));
  const asBefore = (input: PlannedInput): boolean => {
    const { cell } = input;
    const old = was.get(cell.index) ?? input;
    return recorded(cell, values[cell.index]) === recorded(cell, saidBy(old));
  };
  const asked = inputPlanOf(model, book).inputs.filter(
    ({ cell }) => bookCopyOf(model, cell) !== undefined,
  );
  const own = new Set(asked.flatMap((one) => (one.ownRows && !asBefore(one) ? [one.table] : [])));
  const followed = asked.filter((one) => !own.has(one.table) || one.table === undefined);
  for (const one of followed.filter(asBefore)) values[one.cell.index] = saidBy(one);
  fillBook(model, values, book);
  return values;
}

/** What book or template put into an input that a job leaves alone. */
const saidBy = ({ cell, usual, ofRow, isOpen }: PlannedInput): Value =>
  cell.table === undefined ? usual : (ofRow ?? (isOpen ? usual : null));
