import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import { judge } from "./judge.js";
import { ManyJudge } from "./judge-many.js";

/** Formulas from which on building the judge's sheets takes longer than a few moments. */
const large = 2000;
/** Sheets in memory: each takes some hundred megabytes. */
const mostKept = 2;

const asked = new WeakSet<Model>();
/** The one asked last stands last. */
const kept = new Map<Model, ManyJudge>();

/**
 * A job's values by the judge, as `judge` gives them. The sheets of a large model that is asked for a
 * second time stay built, and further jobs set only the cells that differ.
 */
export function judged(model: Model, given: readonly Value[]): Value[] {
  if (model.order.length < large || !asked.has(model)) {
    asked.add(model);
    return judge(model, given);
  }
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
