import { stepsOf } from "../evaluate/closures.js";
import { CellError, type Value } from "../formula/value.js";
import type { Finding } from "./finding.js";
import { moneyOf } from "./moved-price.js";
import { recalculate, staleAsOne } from "./stale.js";
import { agree, heldBy, placeOf, type Subject, saidIn } from "./subject.js";

/** What a workbook shows, and what follows from what it holds. */
export interface Recalculation {
  /** As cached in the workbook; null where a cell is missing. */
  readonly shown: readonly Value[];
  /** From the workbook's own givens; a formula that was changed counts with what it shows. */
  readonly followed: readonly Value[];
  /** From its inputs and prices by the template's formulas and published figures alone. */
  readonly byTemplate: readonly Value[];
}

export function recalculated(
  { model, match }: Subject,
  changed: ReadonlySet<number>,
): Recalculation {
  const shown = model.cells.map((cell) => {
    const place = match.at.get(cell.id);
    if (place === undefined) return cell.fixed ?? null;
    // only a given cell can be blank
    const { value } = place.cell;
    return cell.native !== undefined && value === "" ? "" : heldBy(cell, value);
  });
  const followed = [...shown];
  const steps = stepsOf(model);
  for (const { index, run } of steps) if (!changed.has(index)) run(followed);
  const given = model.cells.map((cell) => cell.fixed ?? shown[cell.index] ?? null);
  // from the same figures by the same formulas come the same ones
  const same = changed.size === 0 && given.every((value, i) => Object.is(value, shown[i]));
  if (same) return { shown, followed, byTemplate: followed };
  for (const { run } of steps) run(given);
  return { shown, followed, byTemplate: given };
}

/** Cached results that do not follow from the workbook's own inputs and formulas; many as one. */
export const checkValues = (
  subject: Subject,
  changed: ReadonlySet<number>,
  values: Recalculation,
): Finding[] =>
  staleAsOne(
    staleValues(subject, changed, values),
    moneyOf(subject.model).map(({ id }) => id),
  );

/** Each cached result that does not follow from the workbook's own inputs and formulas. */
export function staleValues(
  { model, match }: Subject,
  changed: ReadonlySet<number>,
  { shown, followed }: Recalculation,
): Finding[] {
  return model.order.flatMap((cell): Finding[] => {
    const place = match.at.get(cell.id);
    if (place === undefined || changed.has(cell.index)) return [];
    const [here, follows] = [shown[cell.index] ?? null, followed[cell.index] ?? null];
    if (agree(here, follows)) return [];
    const origin =
      follows instanceof CellError && follows.origin !== undefined && follows.origin !== cell.id
        ? ` (from ${follows.origin})`
        : "";
    return [
      {
        grade: "wrong",
        code: "value-stale",
        where: placeOf(place),
        name: cell.id,
        found: `the stored result ${saidIn(model, cell, here, follows)}`,
        expected: `${saidIn(model, cell, follows, here)}${origin}, which follows from the workbook's own inputs`,
        advice: recalculate,
      },
    ];
  });
}
