import type { Calculated } from "../evaluate/judge-beside.js";
import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import type { Context } from "./context.js";

/**
 * Calculates a job by both evaluators. Nothing may take its name before they `agreed`: on all cells, or on those that are
 * `looked` at, by name, and all that they hang on.
 */
export type Calculate = (
  model: Model,
  given: readonly Value[],
  looked?: readonly string[],
) => Calculated;

/**
 * Does work that writes a job, beside the judge: in a thread of its own where the program runs from its
 * built files, else before.
 */
export async function withJudge<T>(
  { templatesModule }: Context,
  work: (calculate: Calculate) => Promise<T>,
): Promise<T> {
  if (templatesModule === undefined) {
    const { calculate } = await import("../evaluate/calculate.js");
    return work((model, given) => ({ values: calculate(model, given), agreed: Promise.resolve() }));
  }
  const { JudgeBeside } = await import("../evaluate/judge-beside.js");
  const judge = new JudgeBeside();
  try {
    return await work((...asked) => judge.calculate(...asked));
  } finally {
    await judge.close();
  }
}
