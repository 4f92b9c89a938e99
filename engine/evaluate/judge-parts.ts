import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import { evaluatorsDiffer } from "./agree.js";
import type { JudgedValue } from "./judge-task.js";
import { Parter } from "./parted.js";
import { Questions } from "./questions.js";

/** What hyperformula is to be asked, so that the values of a job hold. */
export function questionsOf(model: Model, values: readonly Value[]): Questions {
  const questions = new Questions();
  const parter = new Parter(model, values, questions);
  for (const cell of model.order) parter.ask(cell);
  return questions;
}

/** Throws RillbookError naming the first cell whose value is not what these answers make it. */
export function mustBear(questions: Questions, answers: readonly JudgedValue[]): void {
  const found = questions.difference(answers);
  if (found !== undefined) throw evaluatorsDiffer(found.cell, ...found.values);
}
