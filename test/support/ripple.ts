import { type Step, stepsOf } from "../../engine/evaluate/closures.js";
import type { Tree } from "../../engine/formula/tree.js";
import type { Value } from "../../engine/formula/value.js";
import type { Model } from "../../engine/template/model.js";
import { precedents } from "../../engine/template/order.js";

/**
 * What changes in a calculated job when a single cell is set to another value, whatever it
 * holds otherwise: a formula in error, a price, an input. Made ready once for a model.
 */
export class Ripple {
  readonly #steps: readonly Step[];
  /** By the index of a cell, the places in the order of calculation of the formulas that read it. */
  readonly #readers: readonly (readonly number[])[];

  constructor(model: Model) {
    this.#steps = stepsOf(model);
    const readers: number[][] = model.cells.map(() => []);
    model.order.forEach(({ native, row = 0 }, place) => {
      for (const { index } of new Set(precedents(model, native as Tree, row)))
        readers[index]?.push(place);
    });
    this.#readers = readers;
  }

  /**
   * Sets the cell in `values` and recalculates what follows from it; gives the values before of
   * all cells that changed, by index. `undo` puts them back.
   */
  set(values: Value[], index: number, value: Value): Map<number, Value> {
    const before = new Map<number, Value>([[index, values[index] as Value]]);
    values[index] = value;
    const waiting = new Waiting(this.#steps.length);
    waiting.add(this.#readers[index] ?? []);
    for (let place = waiting.next(); place !== undefined; place = waiting.next()) {
      const step = this.#steps[place] as Step;
      // the cell itself stays as it was set
      if (step.index === index) continue;
      const old = values[step.index] as Value;
      step.run(values);
      if (Object.is(old, values[step.index])) continue;
      before.set(step.index, old);
      waiting.add(this.#readers[step.index] ?? []);
    }
    return before;
  }

  undo(values: Value[], before: ReadonlyMap<number, Value>): void {
    for (const [index, value] of before) values[index] = value;
  }
}

/** Places in the order of calculation that wait for their turn, the first of them first. */
class Waiting {
  readonly #marked: Uint8Array;
  #from = 0;
  #count = 0;

  constructor(size: number) {
    this.#marked = new Uint8Array(size);
  }

  /** All lie after the place that was taken last. */
  add(places: readonly number[]): void {
    for (const place of places) {
      if (this.#marked[place] === 1) continue;
      this.#marked[place] = 1;
      this.#count += 1;
      if (place < this.#from) this.#from = place;
    }
  }

  next(): number | undefined {
    if (this.#count === 0) return undefined;
    while (this.#marked[this.#from] !== 1) this.#from += 1;
    this.#marked[this.#from] = 0;
    this.#count -= 1;
    return this.#from;
  }
}
