import type { Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { evaluatorsDiffer } from "./agree.js";
import type { JudgedValue } from "./judge-task.js";
import { Parter } from "./parted.js";
import { Questions } from "./questions.js";

/** A calculated job, and the cells of it that are to hold: with each, all those that its formula reads. */
export interface Claim {
  readonly model: Model;
  readonly values: readonly Value[];
  readonly cells: readonly Cell[];
}

/** What hyperformula is to be asked, so that the values of a job hold. */
export const questionsOf = (model: Model, values: readonly Value[]): Questions =>
  questionsOfAll([{ model, values, cells: model.order }]);

/** The same of several jobs: what they have in common is asked once. */
export function questionsOfAll(claims: readonly Claim[]): Questions {
  const questions = new Questions();
  for (const { model, values, cells } of claims) {
    const parter = new Parter(model, values, questions);
    for (const cell of cells) parter.ask(cell);
  }
  return questions;
}

/** Throws RillbookError naming the first cell whose value is not what these answers make it. */
export function mustBear(questions: Questions, answers: readonly JudgedValue[]): void {
  const found = questions.difference(answers);
  if (found !== undefined) throw evaluatorsDiffer(found.cell, ...found.values);
}
