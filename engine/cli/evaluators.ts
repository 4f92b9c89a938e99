import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";

/** The option of commands that only show a job, and what it does. */
export const bothOption = [
  "--both",
  "calculate a job record by both evaluators, as bid does, and stop where they differ (takes seconds)",
] as const;

type Evaluate = (model: Model, given: readonly Value[]) => readonly Value[];

/** How to calculate a record: by the fast evaluator alone, or by both. */
export async function evaluatorFor({ both }: { readonly both?: true }): Promise<Evaluate> {
  if (both) return (await import("../evaluate/calculate.js")).calculate;
  return (await import("../evaluate/calculate-fast.js")).calculateFast;
}
