import { stepsOf } from "../evaluate/closures.js";
import type { Value } from "../formula/value.js";
import { shown } from "../job/shown-value.js";
import type { Cell, Model } from "../template/model.js";

/** An input that nobody stands behind, and the value before it. */
export interface ChangedInput {
  readonly cell: Cell;
  readonly before: Value;
}

/** More changed inputs than these are told with what they move together. */
const mostAlone = 10;

/** The figure that a template's bids are told by first. */
export function priceOf({ template, byId }: Model): Cell | undefined {
  const name = template.roles?.price ?? template.headline[0];
  return name === undefined ? undefined : byId.get(name);
}

/** All values with some inputs as they were before. */
export function withBefore(
  model: Model,
  byTemplate: readonly Value[],
  changes: readonly ChangedInput[],
): Value[] {
  const values = [...byTemplate];
  for (const { cell, before } of changes) values[cell.index] = before;
  for (const { run } of stepsOf(model)) run(values);
  return values;
}

/**
 * What changed inputs move of the price, as the end of a sentence, by cell: each by itself, or where they are many
 * all of them together.
 *
 * @param byTemplate the values from the inputs as they are
 */
export function movedPrices(
  model: Model,
  byTemplate: readonly Value[],
  changes: readonly ChangedInput[],
): Map<Cell, string> {
  const price = priceOf(model);
  if (price === undefined || changes.length === 0) return new Map();
  const told = (values: readonly Value[], with_: string): string => {
    const [now, then] = [byTemplate, values].map((all) =>
      shown(model, price, all[price.index] ?? null),
    );
    return now === then
      ? `; ${with_} the price would be the same, ${now}`
      : `; ${with_} the price would be ${then}, and is ${now}`;
  };
  if (changes.length > mostAlone) {
    const all = told(
      withBefore(model, byTemplate, changes),
      `with all ${changes.length} changed inputs as they were`,
    );
    return new Map(changes.map(({ cell }) => [cell, all]));
  }
  return new Map(
    changes.map((one) => [
      one.cell,
      told(withBefore(model, byTemplate, [one]), "with the value before it"),
    ]),
  );
}
