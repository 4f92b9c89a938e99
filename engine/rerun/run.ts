import { RillbookError } from "../errors.js";
import type { ResultLine } from "./lines.js";
import type { Done, Task } from "./rerun-one.js";
import type { Workers } from "./workers.js";

/** So many files at most go to a worker at a time: enough to pay for the way. */
const longestList = 16;
/** Into so many lists for each worker is shared out what is left: shorter ones towards the end, so that none waits for another long. */
const listsLeft = 6;

/** The first jobs of a run are always calculated by both evaluators. */
export const judgedFirst = 3;

/** The tasks of a run. One job in `sample` (0: none but the first) is calculated by both evaluators. */
export function tasksFor(
  files: readonly string[],
  done: ReadonlyMap<string, string>,
  sample: number,
): Task[] {
  return files.map((file, i) => {
    const mark = done.get(file);
    const judged = i < judgedFirst || (sample > 0 && i % sample === 0);
    return { file, judged, ...(mark === undefined ? {} : { done: mark }) };
  });
}

/**
 * Does all tasks, a few lists ahead of the workers and no more, so that memory does not grow
 * with their number. Those for both evaluators all go to the first worker, and first: the second evaluator takes
 * long to make ready, and memory. `take` gets the results as they come. Ends early when `signal` is given:
 * what is under way is still taken. `drained` is called once nothing is left to begin.
 * Throws RillbookError where the evaluators differ.
 */
export async function runAll(
  tasks: readonly Task[],
  workers: Workers,
  take: (lines: readonly ResultLine[]) => Promise<void>,
  progress: (count: number) => void,
  signal: AbortSignal,
  drained: () => void = () => undefined,
): Promise<void> {
  const { count } = workers;
  const others = new Queue(count === 1 ? tasks : tasks.filter((task) => !task.judged));
  const judged = new Queue(count === 1 ? [] : tasks.filter((task) => task.judged));
  const work = async (place: number): Promise<void> => {
    while (!signal.aborted) {
      const first = place === 0 ? judged.next(judgedFirst) : [];
      const list = first.length > 0 ? first : others.share(count * listsLeft);
      if (list.length === 0) {
        drained();
        return;
      }
      const done = await workers.run(list, place);
      await take(done.flatMap(lineOf));
      progress(list.length);
    }
  };
  const lane = (_: unknown, i: number) =>
    work(i % count).catch((error: unknown) => {
      judged.drop();
      others.drop();
      throw error;
    });
  const lanes = await Promise.allSettled(Array.from({ length: count * 2 }, lane));
  for (const one of lanes) if (one.status === "rejected") throw one.reason;
}

class Queue {
  #at = 0;

  constructor(private readonly tasks: readonly Task[]) {}

  /** At most so many of those that are left. */
  next(most: number): readonly Task[] {
    const list = this.tasks.slice(this.#at, this.#at + most);
    this.#at += list.length;
    return list;
  }

  /** One of so many lists into which those that are left are shared out. */
  share(lists: number): readonly Task[] {
    const left = this.tasks.length - this.#at;
    return this.next(Math.min(longestList, Math.ceil(left / lists)));
  }

  drop(): void {
    this.#at = this.tasks.length;
  }
}

function lineOf(done: Done): ResultLine[] {
  if ("fault" in done) throw new RillbookError("evaluators-differ", done.fault, 3);
  return "line" in done ? [done.line] : [];
}
