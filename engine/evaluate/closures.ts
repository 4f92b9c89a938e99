import { finite } from "../formula/arithmetic/operators.js";
import { natives } from "../formula/functions/index.js";
import type { Tree } from "../formula/tree.js";
import { CellError, type Value } from "../formula/value.js";
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
  const [formula] = functionsOf([source(model, tree)]) as [Formula];
  return (values, row, id) => settle(formula, values, row, id);
}

interface FunctionStep {
  readonly index: number;
  readonly id: string;
  readonly row: number;
  readonly formula: Formula;
}

const whole = new WeakMap<Model, readonly FunctionStep[]>();

/** The steps of all formulas of a model are made once. */
function functionSteps(model: Model, order: readonly Cell[]): readonly FunctionStep[] {
  if (order !== model.order) return newSteps(model, order);
  const known = whole.get(model) ?? newSteps(model, order);
  whole.set(model, known);
  return known;
}

function newSteps(model: Model, order: readonly Cell[]): FunctionStep[] {
  const trees = [...new Set(order.map(({ native }) => native as Tree))];
  const formulas = functionsOf(trees.map((tree) => source(model, tree)));
  const byTree = new Map(trees.map((tree, i) => [tree, formulas[i] as Formula]));
  return order.map(({ index, id, row = 0, native }) => ({
    index,
    id,
    row,
    formula: byTree.get(native as Tree) as Formula,
  }));
}

/** The functions of some expressions, which see the runtime by its names and the natives as `n`. */
function functionsOf(expressions: readonly string[]): Formula[] {
  const names = Object.keys(runtime).join(",");
  const list = expressions.map((expression) => `(v,r)=>${expression}`).join(",\n");
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
