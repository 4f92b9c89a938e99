import type { Tree } from "../formula/tree.js";
import type { Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { precedents } from "../template/order.js";
import { type BulkEvaluator, compileClosures } from "./closures.js";

/**
 * The formula cells, in order of calculation, that the named cells need; with `changing`
 * (indexes of given cells) only those of them that a change there can reach.
 */
export function coneOf(
  model: Model,
  targets: readonly string[],
  changing?: ReadonlySet<number>,
): Cell[] {
  const needed = new Set(targets.map((name) => model.byId.get(name)?.index));
  const links = model.order.map((cell) =>
    precedents(model, cell.native as Tree, cell.row ?? 0).map(({ index }) => index),
  );
  for (let i = model.order.length - 1; i >= 0; i--) {
    if (!needed.has(model.order[i]?.index)) continue;
    for (const index of links[i] ?? []) needed.add(index);
  }
  const reached = new Set(changing);
  return model.order.filter((cell, i) => {
    if (!needed.has(cell.index)) return false;
    if (changing === undefined) return true;
    if (!(links[i] ?? []).some((index) => reached.has(index))) return false;
    reached.add(cell.index);
    return true;
  });
}

/**
 * The values of a few cells under changed givens: recalculates only what lies between
 * them. `base` holds the values of all cells before the change; it stays as it is.
 */
export class Reach {
  readonly #evaluate: BulkEvaluator;
  readonly #cells: readonly number[];
  readonly #work: Value[];
  readonly #targets: readonly number[];

  constructor(
    model: Model,
    private readonly base: readonly Value[],
    targets: readonly string[],
    changing: ReadonlySet<number>,
  ) {
    const cone = coneOf(model, targets, changing);
    this.#evaluate = compileClosures(model, cone);
    this.#cells = cone.map(({ index }) => index);
    this.#work = [...base];
    this.#targets = targets.map((name) => model.byId.get(name)?.index as number);
  }

  /** The targets' values under these changes, which must be among the changing cells. */
  under(changes: Iterable<readonly [number, Value]>): Value[] {
    const touched: number[] = [];
    for (const [index, value] of changes) {
      this.#work[index] = value;
      touched.push(index);
    }
    this.#evaluate(this.#work);
    const found = this.#targets.map((index) => this.#work[index] as Value);
    for (const index of touched) this.#work[index] = this.base[index] as Value;
    for (const index of this.#cells) this.#work[index] = this.base[index] as Value;
    return found;
  }
}
