import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import { type StepTexts, stepsFrom, stepTexts } from "./closures.js";
import { coneOf, neededBy } from "./cone.js";
import { linksAmong } from "./links.js";
import { residues } from "./partial.js";
import { placesBy, type Readers } from "./ripple.js";

/** What is left of a model's formulas where only some cells move. Plain data: it goes to worker threads. */
export interface Narrowed extends Omit<Readers, "steps"> {
  readonly steps: StepTexts;
}

/**
 * What the targets need where only some given cells move, with all else put in as `base` has it: for many
 * changes of the same few cells. It is made ready in the time of some hundred changes.
 */
export function narrowed(
  model: Model,
  targets: readonly string[],
  changing: ReadonlySet<number>,
  base: readonly Value[],
): Narrowed {
  const left = residues(model, coneOf(model, targets, changing), changing, base);
  const cells = left.map(({ cell }) => cell);
  const formulas = left.map(({ cell: { row = 0 }, tree }) => ({ native: tree, row }));
  const links = linksAmong(model, formulas);
  const needed = neededBy(model, targets, cells, links);
  const isNeeded = (_: unknown, i: number) => needed[cells[i]?.index as number] === 1;
  const reads = links.reads.filter(isNeeded);
  return {
    steps: stepTexts(model, left.filter(isNeeded)),
    ...placesBy(model, { ...links, reads }),
  };
}

/** The same as functions. */
export const readersFrom = ({ steps, ...readers }: Narrowed): Readers => ({
  ...readers,
  steps: stepsFrom(steps),
});
