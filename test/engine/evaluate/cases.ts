import type { FunctionCase } from "./cases/case.js";
import { numberCases, roundingCases } from "./cases/numbers.js";
import { aggregateCases, conditionalCases, errorCases, lookupCases } from "./cases/ranges.js";
import { statisticsCases } from "./cases/statistics.js";
import { dateCases, textCases } from "./cases/text.js";

export type { FunctionCase } from "./cases/case.js";

/** Calls of every native function, for all evaluators alike. */
export const cases: readonly FunctionCase[] = [
  ...numberCases,
  ...roundingCases,
  ...aggregateCases,
  ...conditionalCases,
  ...errorCases,
  ...lookupCases,
  ...textCases,
  ...dateCases,
  ...statisticsCases,
];
