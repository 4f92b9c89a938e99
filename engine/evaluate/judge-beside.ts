import { once } from "node:events";
import { Worker } from "node:worker_threads";
import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import { calculateFast } from "./calculate-fast.js";
import { coneOf } from "./cone.js";
import { mustBear, questionsOfAll } from "./judge-parts.js";
import type { JudgedValue } from "./judge-task.js";

/** Young space of the thread, MB: what hyperformula builds lives on, and is copied less often so. */
const youngMemory = 64;

/** A job's values, while the judge is still at work on them. */
export interface Calculated {
  readonly values: Value[];
  /** Settles when the judge came to the same; else rejects, and nothing may be made of the values. */
  readonly agreed: Promise<void>;
}

/**
 * The judge of one job in a thread of its own, so that a workbook is written while it works. It is begun
 * before there is anything to judge, since hyperformula takes its time to load. Close it at the end.
 */
export class JudgeBeside {
  readonly #thread = new Worker(new URL("../evaluate/judge-thread.js", import.meta.url), {
    resourceLimits: { maxYoungGenerationSizeMb: youngMemory },
  });
  readonly #answer = settledByItself(Promise.race([this.#judged(), this.#ended()]));

  /**
   * The values of the job by the closures; the judge has begun to answer what they stand on.
   * @param looked the names of the cells that are looked at, where that is not all of them: with each, what it hangs on is judged
   */
  calculate(model: Model, given: readonly Value[], looked?: readonly string[]): Calculated {
    const values = calculateFast(model, given);
    const cells = looked === undefined ? model.order : coneOf(model, looked);
    const questions = questionsOfAll([{ model, values, cells }]);
    this.#thread.postMessage(questions.task());
    const agreed = this.#answer.then((answers) => mustBear(questions, answers));
    return { values, agreed: settledByItself(agreed) };
  }

  /** Rejects with what the thread fails by. */
  async #judged(): Promise<readonly JudgedValue[]> {
    const [judged] = await once(this.#thread, "message");
    return judged;
  }

  async #ended(): Promise<never> {
    await once(this.#thread, "exit");
    throw new Error("The judge ended without an answer.");
  }

  async close(): Promise<void> {
    await this.#thread.terminate();
  }
}

/** A promise that may fail unasked, where another fault came first. */
function settledByItself<T>(promise: Promise<T>): Promise<T> {
  promise.catch(() => undefined);
  return promise;
}
