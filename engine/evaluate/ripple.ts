import { CellError, isPlainlySame, type Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { type Steps, stepsAmong } from "./closures.js";
import { type Links, type Lists, links, listsOf } from "./links.js";

/** Formulas of a model in the order of calculation, and by the index of a cell the places of those that read it. */
export interface Readers {
  readonly steps: Steps;
  /** The places that read a cell or a stretch, as `Links` counts them. */
  readonly places: Lists;
  /** The stretches in which a cell stands. */
  readonly within: Lists;
  /** How many cells there are, before the stretches. */
  readonly cells: number;
}

/** Who reads whom among some formula cells of a model, given in their order of calculation. */
export function readersAmong(model: Model, cells: readonly Cell[]): Readers {
  const wanted = new Uint8Array(model.cells.length);
  for (const { index } of cells) wanted[index] = 1;
  const { reads, stretches, within } = links(model);
  const some = reads.filter((_, i) => wanted[model.order[i]?.index as number] === 1);
  return {
    steps: stepsAmong(model, cells),
    ...placesBy(model, { reads: some, stretches, within }),
  };
}

/** By the index of a cell the places of the formulas that read it. */
export function placesBy(
  model: Model,
  { reads, stretches, within }: Links,
): Omit<Readers, "steps"> {
  const cells = model.cells.length;
  const places = listsOf(cells + stretches.length, (put) => {
    reads.forEach((read, place) => {
      for (const node of read) put(node, place);
    });
  });
  return { places, within, cells };
}

/**
 * Values that are kept from one calculation to the next: a change calculates the formulas that read it,
 * in their order, and goes no further where a formula comes to what it was. Formulas give the same
 * for the same, so that each value is the one that a calculation of all formulas would give.
 */
export class Ripple {
  /** The formulas, by place, that wait for their turn: 1. */
  readonly #waiting: Uint8Array;
  /** The stretches of which some cell changed since the last `settle` began: their readers wait already. */
  readonly #stirred: Uint8Array;

  /**
   * @param values becomes this object's own
   * @param settled whether the formulas among them are calculated; else the first `settle` calculates all
   */
  constructor(
    private readonly readers: Readers,
    readonly values: Value[],
    settled: boolean,
  ) {
    this.#waiting = new Uint8Array(readers.steps.count).fill(settled ? 0 : 1);
    this.#stirred = new Uint8Array(readers.places.from.length - readers.cells);
  }

  /** Gives a cell without formula a value. */
  set(index: number, value: Value): void {
    if (same(this.values[index] as Value, value)) return;
    this.values[index] = value;
    this.#wake(index);
  }

  /**
   * Brings all formulas up to date.
   * @param changed takes the indexes of the cells whose value became another one
   */
  settle(changed?: number[]): void {
    const { values } = this;
    const { count, index, run } = this.readers.steps;
    const waiting = this.#waiting;
    // what reads a cell stands behind it
    for (let place = 0; place < count; place++) {
      if (waiting[place] === 0) {
        place = waiting.indexOf(1, place + 1);
        if (place < 0) break;
      }
      waiting[place] = 0;
      const at = index[place] as number;
      const value = run(place, values);
      if (same(values[at] as Value, value)) continue;
      values[at] = value;
      changed?.push(at);
      this.#wake(at);
    }
    // who reads a stretch stands behind all of its cells: none of them changed after it ran
    this.#stirred.fill(0);
  }

  #wake(index: number): void {
    const { within, cells } = this.readers;
    this.#readersWait(index);
    const end = within.from[index + 1] as number;
    for (let i = within.from[index] as number; i < end; i++) {
      const stretch = within.all[i] as number;
      if (this.#stirred[stretch - cells] === 1) continue;
      this.#stirred[stretch - cells] = 1;
      this.#readersWait(stretch);
    }
  }

  #readersWait(node: number): void {
    const { from, all } = this.readers.places;
    const end = from[node + 1] as number;
    for (let i = from[node] as number; i < end; i++) this.#waiting[all[i] as number] = 1;
  }
}

/** Does any formula read the cell, by itself or in a stretch? */
export function isRead({ places, within }: Readers, index: number): boolean {
  const reads = (node: number) => places.from[node] !== places.from[node + 1];
  const stretches = within.all.subarray(within.from[index], within.from[index + 1]);
  return reads(index) || stretches.some(reads);
}

function same(one: Value, other: Value): boolean {
  // no cell holds a negative zero, or what is no number
  if (isPlainlySame(one, other)) return true;
  if (one instanceof CellError && other instanceof CellError) {
    return one.code === other.code && one.origin === other.origin;
  }
  return false;
}
