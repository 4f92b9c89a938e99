import type { Tree } from "../formula/tree.js";
import type { Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { precedents } from "../template/order.js";
import { type BulkEvaluator, compileClosures } from "./closures.js";

const linksOf = new WeakMap<Model, readonly (readonly number[])[]>();

/** For each formula cell, in order of calculation, the indexes of the cells that it reads. */
export function links(model: Model): readonly (readonly number[])[] {
  const known = linksOf.get(model);
  if (known !== undefined) return known;
  const made = model.order.map((cell) =>
    precedents(model, cell.native as Tree, cell.row ?? 0).map(({ index }) => index),
  );
  linksOf.set(model, made);
  return made;
}

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
  const reads = links(model);
  for (let i = model.order.length - 1; i >= 0; i--) {
    if (!needed.has(model.order[i]?.index)) continue;
    for (const index of reads[i] ?? []) needed.add(index);
  }
  const reached = new Set(changing);
  return model.order.filter((cell, i) => {
    if (!needed.has(cell.index)) return false;
    if (changing === undefined) return true;
    if (!(reads[i] ?? []).some((index) => reached.has(index))) return false;
    reached.add(cell.index);
    return true;
  });
}

/** Part of a model, made ready once for many jobs: what the targets need. */
export class Cone {
  readonly evaluate: BulkEvaluator;
  readonly cells: readonly Cell[];

  constructor(model: Model, targets: readonly string[], changing?: ReadonlySet<number>) {
    this.cells = coneOf(model, targets, changing);
    this.evaluate = compileClosures(model, this.cells);
  }

  /** The values of a job; formula cells outside of the cone stay as given. */
  calculate(given: readonly Value[]): Value[] {
    const values = given.slice();
    this.evaluate(values);
    return values;
  }
}

/**
 * The values of a few cells under changed givens: recalculates only what lies between
 * them. `base` holds the values before the change, of the cone at least; it stays as it is.
 */
export class Reach {
  readonly #work: Value[];
  readonly #targets: readonly number[];

  constructor(
    model: Model,
    private readonly base: readonly Value[],
    targets: readonly string[],
    private readonly cone: Cone,
  ) {
    this.#work = [...base];
    this.#targets = targets.map((name) => model.byId.get(name)?.index as number);
  }

  /** The targets' values under these changes, which must be of cells that the cone answers to. */
  under(changes: Iterable<readonly [number, Value]>): Value[] {
    const touched: number[] = [];
    for (const [index, value] of changes) {
      this.#work[index] = value;
      touched.push(index);
    }
    this.cone.evaluate(this.#work);
    const found = this.#targets.map((index) => this.#work[index] as Value);
    for (const index of touched) this.#work[index] = this.base[index] as Value;
    return found;
  }
}
