import { finite } from "../formula/arithmetic/operators.js";
import { natives } from "../formula/functions/index.js";
import type { Tree } from "../formula/tree.js";
import { CellError, type Value } from "../formula/value.js";
import { type FunctionList, madeCodeOf } from "../template/made-code.js";
import type { Cell, Model } from "../template/model.js";
import { runtime } from "./runtime.js";
import { source } from "./source.js";

type Formula = (values: readonly Value[], row: number) => Value;

/** A model turned into JavaScript closures: fills in the formula cells of a list of values, in order. */
export type BulkEvaluator = (values: Value[]) => void;

/**
 * Turns the checked formula trees of a model into JavaScript functions: a few milliseconds a job.
 * The rows of a column share one function.
 *
 * The evaluator takes a list with a value for each cell of the model (by index; inputs,
 * published and office-book cells given, formula cells of any content) and overwrites the
 * formula cells, all or those of `order`. An error becomes the value of its cell, with the
 * cell it arose in.
 */
export function compileClosures(model: Model, order: readonly Cell[] = model.order): BulkEvaluator {
  const { count, index, run } = stepsAmong(model, order);
  return (values) => {
    for (let place = 0; place < count; place++) values[index[place] as number] = run(place, values);
  };
}

/**
 * Formula cells in order of calculation. Their places and rows stand in lists of bare numbers: thousands of steps
 * are gone through for each job, and what each of them has to look up in memory is most of their time.
 */
export interface Steps {
  readonly count: number;
  /** The index of each cell. */
  readonly index: Uint32Array;
  /** The value of a formula by those it reads; the error that it runs into, with the cell it arose in. */
  readonly run: (place: number, values: readonly Value[]) => Value;
}

/** The formulas of some cells as functions, which are made once for a model. */
export function stepsAmong(model: Model, order: readonly Cell[]): Steps {
  const byIndex = formulasByIndex(model);
  const formulas = order.map((cell) => byIndex[cell.index] as Formula);
  return stepsBy(formulas, placed(order));
}

/** Where formula cells stand, in order of calculation. */
interface Placed {
  readonly index: Uint32Array;
  readonly rows: Uint32Array;
  readonly ids: readonly string[];
}

const placed = (order: readonly Cell[]): Placed => ({
  index: Uint32Array.from(order, ({ index }) => index),
  rows: Uint32Array.from(order, ({ row = 0 }) => row),
  ids: order.map(({ id }) => id),
});

/** Formulas as text. Plain data: it goes to worker threads. */
export interface StepTexts extends Placed, FunctionList {}

/** What is left of formulas, as text: those that read alike once. */
export function stepTexts(
  model: Model,
  residues: readonly { readonly cell: Cell; readonly tree: Tree }[],
): StepTexts {
  const texts = residues.map(({ tree }) => functionText(model, tree));
  const distinct = new Map([...new Set(texts)].map((text, i) => [text, i]));
  return {
    text: [...distinct.keys()].join(",\n"),
    places: texts.map((text) => distinct.get(text) as number),
    ...placed(residues.map(({ cell }) => cell)),
  };
}

export function stepsFrom({ text, places, ...cells }: StepTexts): Steps {
  const made = functionsOf(text);
  const formulas = places.map((place) => made[place] as Formula);
  return stepsBy(formulas, cells);
}

function stepsBy(formulas: readonly Formula[], { index, rows, ids }: Placed): Steps {
  return {
    count: formulas.length,
    index,
    run: (place, values) => {
      try {
        return settled((formulas[place] as Formula)(values, rows[place] as number));
      } catch (error) {
        return arisen(error, ids[place] as string);
      }
    },
  };
}

/** One formula cell of a model: fills in its value from those it reads. */
export interface Step {
  readonly index: number;
  readonly run: (values: Value[]) => void;
}

/** The same for all cells of a model, one by one. */
export function stepsOf(model: Model): Step[] {
  const { run } = stepsAmong(model, model.order);
  return model.order.map(({ index }, place) => ({
    index,
    run: (values) => {
      values[index] = run(place, values);
    },
  }));
}

/**
 * One native tree as a function: its value for a list of values, from within a row. An error that
 * arises in it names `id` as its origin.
 */
export function compileTree(
  model: Model,
  tree: Tree,
): (values: readonly Value[], row: number, id: string) => Value {
  const [formula] = functionsOf(functionText(model, tree)) as [Formula];
  return (values, row, id) => {
    try {
      return settled(formula(values, row));
    } catch (error) {
      return arisen(error, id);
    }
  };
}

const whole = new WeakMap<Model, readonly Formula[]>();

/** The functions of a model by the index of the cell; a few of them stand for all. */
function formulasByIndex(model: Model): readonly Formula[] {
  const known = whole.get(model);
  if (known !== undefined) return known;
  const { text, places } = madeCodeOf(model)?.functions() ?? functionList(model);
  const formulas = functionsOf(text);
  const made: Formula[] = [];
  model.order.forEach(({ index }, i) => {
    made[index] = formulas[places[i] as number] as Formula;
  });
  whole.set(model, made);
  return made;
}

/** The formulas of a model as the text of functions: the rows of a column share one. */
export function functionList(model: Model): FunctionList {
  const trees = [...new Set(model.order.map(({ native }) => native as Tree))];
  const byTree = new Map(trees.map((tree, i) => [tree, i]));
  return {
    text: trees.map((tree) => functionText(model, tree)).join(",\n"),
    places: model.order.map(({ native }) => byTree.get(native as Tree) as number),
  };
}

const functionText = (model: Model, tree: Tree): string => `(v,r)=>${source(model, tree)}`;

/** The functions of a list, which see the runtime by its names and the natives as `n`. */
function functionsOf(list: string): Formula[] {
  const names = Object.keys(runtime).join(",");
  const make = new Function(
    "runtime",
    "n",
    `"use strict";const {${names}}=runtime;return [${list}];`,
  );
  return make(runtime, runs) as Formula[];
}

const runs = Object.fromEntries([...natives].map(([name, native]) => [name, native.run]));

/** What a formula gives, as a cell holds it. Throws #NUM!. */
function settled(value: Value): Value {
  if (typeof value === "number") return finite(value);
  return value === null ? 0 : value;
}

/** An error value with the cell in which it arose. */
function arisen(error: unknown, id: string): CellError {
  if (!(error instanceof CellError)) throw error;
  return error.origin === undefined ? new CellError(error.code, id) : error;
}
