import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import { calculateFast } from "./calculate-fast.js";
import { mustBeJudged } from "./kept-judge.js";

export { firstDifference } from "./agree.js";
export { calculateFast, evaluatorOf } from "./calculate-fast.js";

/**
 * The values of a job by the closures, which hyperformula has to come to as well.
 * Throws RillbookError naming the first cell in which they differ.
 */
export function calculate(model: Model, given: readonly Value[]): Value[] {
  const values = calculateFast(model, given);
  mustBeJudged(model, given, values);
  return values;
}
