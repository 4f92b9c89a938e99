import type { Model } from "./model.js";

/** What was made of a model before, and is kept with it. */
export interface MadeCode {
  readonly functions: () => FunctionList;
  readonly reads: () => ReadList;
  /** The body of a module that exports the check of a job record against its schema. */
  readonly validator: () => string;
}

/** The formulas of a model as functions, each distinct one once. */
export interface FunctionList {
  /** Their text, to stand within the brackets of a list. */
  readonly text: string;
  /** For each cell in the order of calculation, the place of its function. */
  readonly places: readonly number[];
}

/** What the formulas of a model read. */
export interface ReadList {
  /** For each formula in order of calculation: how many cells and stretches of cells it reads. */
  readonly counts: readonly number[];
  /** These, one formula's behind the other's: the index of a cell, or the place of a stretch on from the number of cells. */
  readonly nodes: readonly number[];
  /** Of each stretch in turn where it begins, and how many cells it has. */
  readonly stretches: readonly number[];
}

// not a part of the model: a changed copy of it has other code
const made = new WeakMap<Model, MadeCode>();

export const madeCodeOf = (model: Model): MadeCode | undefined => made.get(model);

/** Says which code a model comes with, so that none is made again. */
export function withMadeCode(model: Model, code: MadeCode): Model {
  made.set(model, code);
  return model;
}
