import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import { mustAgree } from "./agree.js";
import { judge } from "./judge.js";
import { ManyJudge } from "./judge-many.js";
import { mustBear, questionsOf } from "./judge-parts.js";
import { judgedValues } from "./judge-sheets.js";

/** Formulas from which on building the judge's sheets takes longer than a few moments. */
const large = 2000;
/** Sheets in memory: each takes some hundred megabytes. */
const mostKept = 2;
/** Jobs of a model that are asked by questions: those of so many take as long as sheets that stay built. */
const mostAsked = 3;

const asked = new WeakMap<Model, number>();
/** The one asked last stands last. */
const kept = new Map<Model, ManyJudge>();

/**
 * Holds the values of a job against the judge. The first jobs of a large model are asked by questions, which is a
 * third of the work; where more of them come, its sheets stay built, and each job sets only the cells that differ.
 * Throws RillbookError naming the first cell in which they differ.
 */
export function mustBeJudged(
  model: Model,
  given: readonly Value[],
  values: readonly Value[],
): void {
  if (model.order.length < large) {
    mustAgree(model, judge(model, given), values);
    return;
  }
  const before = asked.get(model) ?? 0;
  asked.set(model, before + 1);
  if (before < mostAsked) {
    const questions = questionsOf(model, values);
    mustBear(questions, judgedValues(questions.task()));
  } else mustAgree(model, bySheets(model, given), values);
}

function bySheets(model: Model, given: readonly Value[]): Value[] {
  const found = kept.get(model) ?? new ManyJudge(model, given);
  kept.delete(model);
  try {
    const values = found.values(given);
    kept.set(model, found);
    dropOldest();
    return values;
  } catch (error) {
    // whatever it stopped at, nothing is built on it
    found.close();
    throw error;
  }
}

function dropOldest(): void {
  for (const [model, one] of kept) {
    if (kept.size <= mostKept) return;
    kept.delete(model);
    one.close();
  }
}
