import { calculateFast } from "../evaluate/calculate-fast.js";
import type { Value } from "../formula/value.js";
import { shown } from "../job/shown-value.js";
import type { Cell, Model } from "../template/model.js";

/** An input or a price that nobody stands behind, and the value before it. */
export interface ChangedInput {
  readonly cell: Cell;
  readonly before: Value;
}

/** More changes than these are told with what they move together. */
const mostAlone = 10;

/** The figure that a template's bids are told by first. */
export function priceOf({ template, byId }: Model): Cell | undefined {
  const name = template.roles?.price ?? template.headline[0];
  return name === undefined ? undefined : byId.get(name);
}

/** What the customer pays, then the price where that is another cell: a discount or an option moves the first alone. */
export function moneyOf(model: Model): Cell[] {
  const paid = model.byId.get(model.template.roles?.agreed?.sum ?? "");
  return [...new Set([paid, priceOf(model)])].filter((cell) => cell !== undefined);
}

/** All values with some inputs and prices as they were before. */
export function withBefore(
  model: Model,
  byTemplate: readonly Value[],
  changes: readonly ChangedInput[],
): Value[] {
  const values = [...byTemplate];
  for (const { cell, before } of changes) values[cell.index] = before;
  return calculateFast(model, values);
}

/**
 * What changed inputs and prices move of what the customer pays and of the price, as the end of a sentence, by cell: each
 * by itself, or where they are many all of them together.
 *
 * @param byTemplate the values from the inputs and prices as they are
 */
export function movedPrices(
  model: Model,
  byTemplate: readonly Value[],
  changes: readonly ChangedInput[],
): Map<Cell, string> {
  const many = changes.length > mostAlone;
  return many
    ? movedBy(model, byTemplate, changes, `with all ${changes.length} changes undone`, "with them")
    : movedBy(model, byTemplate, changes, "with the value before it", "with this one");
}

/** As `movedPrices`, for given cells whose names stand for others: with the values that formulas take for theirs. */
export const movedByNames = (
  model: Model,
  byTemplate: readonly Value[],
  taken: readonly ChangedInput[],
): Map<Cell, string> =>
  movedBy(model, byTemplate, taken, "with what stands there", "with what stands in its own cell");

function movedBy(
  model: Model,
  byTemplate: readonly Value[],
  changes: readonly ChangedInput[],
  before: string,
  after: string,
): Map<Cell, string> {
  const money = moneyOf(model);
  if (money.length === 0 || changes.length === 0) return new Map();
  const told = (values: readonly Value[]): string => {
    const moves = money.map((cell): Move => {
      const [now = "", earlier = ""] = [byTemplate, values].map((all) =>
        shown(model, cell, all[cell.index] ?? null),
      );
      return { name: nameOf(cell), now, earlier };
    });
    return movesSaid(moves, before, after);
  };
  if (changes.length > mostAlone) {
    const all = told(withBefore(model, byTemplate, changes));
    return new Map(changes.map(({ cell }) => [cell, all]));
  }
  return new Map(changes.map((one) => [one.cell, told(withBefore(model, byTemplate, [one]))]));
}

interface Move {
  readonly name: string;
  readonly now: string;
  readonly earlier: string;
}

/** Of all that moves what it was and is; where nothing does, that nothing does. */
function movesSaid(moves: readonly Move[], before: string, after: string): string {
  const moved = moves.filter(({ now, earlier }) => now !== earlier);
  const told = alike(moved.length === 0 ? moves : moved);
  const said = told.map(({ name, now, earlier }) =>
    moved.length === 0
      ? `${name} would be the same, ${now}`
      : `${name} would be ${earlier}, ${after} it is ${now}`,
  );
  return `; ${before} ${said.join("; ")}`;
}

/** Figures that were the same and are the same are told as one. */
function alike(moves: readonly Move[]): Move[] {
  const [first, second] = moves;
  if (first === undefined || second === undefined) return [...moves];
  if (first.now !== second.now || first.earlier !== second.earlier) return [...moves];
  return [{ ...first, name: `${second.name} and ${first.name.replace(/^the /, "")}` }];
}

const nameOf = ({ declaration: { label } }: Cell): string =>
  `the ${label.slice(0, 1).toLowerCase()}${label.slice(1)}`;
