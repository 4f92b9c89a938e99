import { CellError, type Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { type Step, stepsOf } from "./closures.js";
import { links } from "./links.js";

/** Formulas of a model in the order of calculation, and by the index of a cell the places of those that read it. */
export interface Readers {
  readonly steps: readonly Step[];
  /** The places that read cell `i` stand in `places` from `from[i]` up to `from[i + 1]`. */
  readonly from: Uint32Array;
  readonly places: Uint32Array;
}

/** Who reads whom among some formula cells of a model, given in their order of calculation. */
export function readersAmong(model: Model, cells: readonly Cell[]): Readers {
  const wanted = new Set(cells.map(({ index }) => index));
  const within = (_: unknown, i: number) => wanted.has(model.order[i]?.index as number);
  const reads = links(model).filter(within);
  const from = new Uint32Array(model.cells.length + 1);
  for (const read of reads) for (const index of read) from[index + 1] = (from[index + 1] ?? 0) + 1;
  for (let i = 1; i < from.length; i++) from[i] = (from[i] ?? 0) + (from[i - 1] ?? 0);
  const places = new Uint32Array(from[model.cells.length] ?? 0);
  const next = from.slice();
  reads.forEach((read, place) => {
    for (const index of read) {
      const at = next[index] as number;
      places[at] = place;
      next[index] = at + 1;
    }
  });
  return { steps: stepsOf(model).filter(within), from, places };
}

/**
 * Values that are kept from one calculation to the next: a change calculates the formulas that read it,
 * in their order, and goes no further where a formula comes to what it was. Formulas give the same
 * for the same, so that each value is the one that a calculation of all formulas would give.
 */
export class Ripple {
  /** The formulas, by place, that wait for their turn: 1. */
  readonly #waiting: Uint8Array;

  /**
   * @param values becomes this object's own
   * @param settled whether the formulas among them are calculated; else the first `settle` calculates all
   */
  constructor(
    private readonly readers: Readers,
    readonly values: Value[],
    settled: boolean,
  ) {
    this.#waiting = new Uint8Array(readers.steps.length).fill(settled ? 0 : 1);
  }

  /** Gives a cell without formula a value. */
  set(index: number, value: Value): void {
    if (same(this.values[index] as Value, value)) return;
    this.values[index] = value;
    this.#wake(index);
  }

  /** Brings all formulas up to date. */
  settle(): void {
    const { values, readers } = this;
    const waiting = this.#waiting;
    // what reads a cell stands behind it
    for (let place = waiting.indexOf(1); place >= 0; place = waiting.indexOf(1, place + 1)) {
      waiting[place] = 0;
      const { index, run } = readers.steps[place] as Step;
      const before = values[index] as Value;
      run(values);
      if (!same(before, values[index] as Value)) this.#wake(index);
    }
  }

  #wake(index: number): void {
    const { from, places } = this.readers;
    const end = from[index + 1] as number;
    for (let i = from[index] as number; i < end; i++) this.#waiting[places[i] as number] = 1;
  }
}

function same(one: Value, other: Value): boolean {
  if (one instanceof CellError && other instanceof CellError) {
    return one.code === other.code && one.origin === other.origin;
  }
  return Object.is(one, other);
}
