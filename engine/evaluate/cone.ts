import { isPlainlySame, type Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { type Links, links } from "./links.js";
import { isRead, type Readers, Ripple, readersAmong } from "./ripple.js";

/**
 * The formula cells, in order of calculation, that the named cells need; with `changing`
 * (indexes of given cells) only those of them that a change there can reach.
 */
export function coneOf(
  model: Model,
  targets: readonly string[],
  changing?: ReadonlySet<number>,
): Cell[] {
  const { reads, stretches, within } = links(model);
  const cells = model.cells.length;
  const needed = neededBy(model, targets, model.order, { reads, stretches });
  const reached = new Uint8Array(cells + stretches.length);
  const reach = (index: number) => {
    reached[index] = 1;
    const end = within.from[index + 1] as number;
    for (let i = within.from[index] as number; i < end; i++) reached[within.all[i] as number] = 1;
  };
  for (const index of changing ?? []) reach(index);
  return model.order.filter(({ index }, i) => {
    if (needed[index] === 0) return false;
    if (changing === undefined) return true;
    if (!(reads[i] ?? []).some((node) => reached[node] === 1)) return false;
    reach(index);
    return true;
  });
}

/** Marks what the targets need, by index, stretches behind the cells; the formulas are in order of calculation. */
export function neededBy(
  model: Model,
  targets: readonly string[],
  formulas: readonly Cell[],
  { reads, stretches }: Pick<Links, "reads" | "stretches">,
): Uint8Array {
  const cells = model.cells.length;
  const needed = new Uint8Array(cells + stretches.length);
  for (const name of targets) needed[model.byId.get(name)?.index ?? cells] = 1;
  for (let i = formulas.length - 1; i >= 0; i--) {
    if (needed[formulas[i]?.index as number] === 0) continue;
    for (const node of reads[i] ?? []) {
      if (needed[node] === 1) continue;
      needed[node] = 1;
      const { from, rows } = stretches[node - cells] ?? { from: 0, rows: 0 };
      needed.fill(1, from, from + rows);
    }
  }
  return needed;
}

/** Part of a model, made ready once for many jobs: what the targets need. */
export class Cone {
  readonly cells: readonly Cell[];
  readonly readers: Readers;
  /** The cells without formula that a formula of the cone reads. */
  readonly #given: Uint32Array;
  /** All other cells that the cone does not calculate. */
  readonly #beside: Uint32Array;
  #kept: Ripple | undefined;

  constructor(model: Model, targets: readonly string[], changing?: ReadonlySet<number>) {
    this.cells = coneOf(model, targets, changing);
    this.readers = readersAmong(model, this.cells);
    const calculated = new Set(this.readers.steps.index);
    const others = Uint32Array.from(model.cells.keys()).filter((index) => !calculated.has(index));
    this.#given = others.filter((index) => isRead(this.readers, index));
    this.#beside = others.filter((index) => !isRead(this.readers, index));
  }

  /**
   * The values of a job; formula cells outside of the cone stay as given. Of the formulas, those are
   * calculated that read what is not as it was in the job before.
   */
  calculate(given: readonly Value[]): Value[] {
    this.#kept ??= new Ripple(this.readers, given.slice(), false);
    const kept = this.#kept;
    const { values } = kept;
    const read = this.#given;
    for (let i = 0; i < read.length; i++) {
      const index = read[i] as number;
      const value = given[index] as Value;
      if (!isPlainlySame(values[index] as Value, value)) kept.set(index, value);
    }
    const beside = this.#beside;
    for (let i = 0; i < beside.length; i++) {
      const index = beside[i] as number;
      const value = given[index] as Value;
      if (!isPlainlySame(values[index] as Value, value)) values[index] = value;
    }
    kept.settle();
    return values.slice();
  }

  /** Does any formula of the cone hold an error among these values? */
  holdsError(values: readonly Value[]): boolean {
    const { index } = this.readers.steps;
    for (let i = 0; i < index.length; i++) {
      // of all values only errors and blanks are objects
      const value = values[index[i] as number] as Value;
      if (typeof value === "object" && value !== null) return true;
    }
    return false;
  }
}

/**
 * The values of a few cells under changed givens: recalculates only what lies between
 * them. `base` holds the values before the change, of the cone at least; it stays as it is.
 */
export class Reach {
  readonly #kept: Ripple;
  readonly #targets: readonly number[];

  constructor(
    model: Model,
    private readonly base: readonly Value[],
    targets: readonly string[],
    cone: Pick<Cone, "readers">,
  ) {
    this.#kept = new Ripple(cone.readers, base.slice(), true);
    this.#targets = targets.map((name) => model.byId.get(name)?.index as number);
  }

  /** The targets' values under these changes, which must be of cells that the cone answers to. */
  under(changes: Iterable<readonly [number, Value]>): Value[] {
    const { values } = this.#kept;
    const changed: number[] = [];
    for (const [index, value] of changes) {
      this.#kept.set(index, value);
      changed.push(index);
    }
    this.#kept.settle(changed);
    const found = this.#found();
    // what was is put back, and not calculated again
    for (const index of changed) values[index] = this.base[index] as Value;
    return found;
  }

  #found(): Value[] {
    return this.#targets.map((index) => this.#kept.values[index] as Value);
  }
}
