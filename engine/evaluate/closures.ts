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
  const steps = functionSteps(model, order);
  return (values) => {
    for (const { index, id, row, formula } of steps) {
      values[index] = settle(formula, values, row, id);
    }
  };
}

/** One formula cell of a model: fills in its value from those it reads. */
export interface Step {
  readonly index: number;
  readonly run: (values: Value[]) => void;
}

/** The same functions cell by cell, in order of calculation. */
export function stepsOf(model: Model): Step[] {
  return functionSteps(model, model.order).map(({ index, id, row, formula }) => ({
    index,
    run: (values) => {
      values[index] = settle(formula, values, row, id);
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
  return (values, row, id) => settle(formula, values, row, id);
}

interface FunctionStep {
  readonly index: number;
  readonly id: string;
  readonly row: number;
  readonly formula: Formula;
}

const whole = new WeakMap<Model, readonly FunctionStep[]>();

/** The steps of a model are made once; those of a part of its formulas are the same functions. */
function functionSteps(model: Model, order: readonly Cell[]): readonly FunctionStep[] {
  const all = whole.get(model) ?? newSteps(model);
  whole.set(model, all);
  if (order === model.order) return all;
  const byIndex = new Map(all.map((step) => [step.index, step]));
  return order.map(({ index }) => byIndex.get(index) as FunctionStep);
}

function newSteps(model: Model): FunctionStep[] {
  const { text, places } = madeCodeOf(model)?.functions() ?? functionList(model);
  const formulas = functionsOf(text);
  return model.order.map(({ index, id, row = 0 }, i) => ({
    index,
    id,
    row,
    formula: formulas[places[i] as number] as Formula,
  }));
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
  const run = Object.fromEntries([...natives].map(([name, native]) => [name, native.run]));
  return make(runtime, run) as Formula[];
}

function settle(formula: Formula, values: readonly Value[], row: number, id: string): Value {
  try {
    const value = formula(values, row);
    if (typeof value === "number") return finite(value);
    return value === null ? 0 : value;
  } catch (error) {
    if (!(error instanceof CellError)) throw error;
    return error.origin === undefined ? new CellError(error.code, id) : error;
  }
}
