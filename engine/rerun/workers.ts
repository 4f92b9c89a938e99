import { availableParallelism } from "node:os";
import { Piscina } from "piscina";
import { type Asked, type Done, Rerunner, type Task } from "./rerun-one.js";
import type { Trade } from "./trade.js";

/** Where tasks are done: worker threads, or this thread. */
export interface Workers {
  /** How many lists of tasks are done at a time. */
  readonly count: number;
  readonly run: (tasks: readonly Task[]) => Promise<readonly Done[]>;
  readonly close: () => Promise<void>;
}

/** Old space of a thread, MB: a job needs a hundredth, and a run stays under 600 MB in all. */
const threadMemory = 400;

/** In this thread, one after another. */
export function inThisThread(trade: Trade, asked: Asked): Workers {
  const rerunner = new Rerunner(trade, asked);
  return {
    count: 1,
    run: async (tasks) => {
      const done: Done[] = [];
      for (const task of tasks) done.push(await rerunner.run(task));
      return done;
    },
    close: async () => rerunner.close(),
  };
}

/** Where a thread finds the templates: it loads them by itself, since formulas cannot be sent. */
export interface TemplateSources {
  /** URL of a module that exports `templates`. */
  readonly templatesModule: string;
  /** Files of an office's own. */
  readonly templateFiles: readonly string[];
}

/**
 * Worker threads.
 * @param sources loaded in each thread
 * @param wanted how many; 0: one for each processor
 */
export function inThreads(sources: TemplateSources, asked: Asked, wanted: number): Workers {
  const count = wanted === 0 ? availableParallelism() : wanted;
  const pool = new Piscina<readonly Task[], Done[]>({
    filename: new URL("./worker.js", import.meta.url).href,
    workerData: { ...sources, asked },
    minThreads: count,
    maxThreads: count,
    resourceLimits: { maxOldGenerationSizeMb: threadMemory },
  });
  return {
    count,
    run: (tasks) => oneByOneIfLost(tasks, (some) => pool.run(some)),
    close: () => pool.destroy(),
  };
}

/** A thread that ends (out of memory) takes its tasks along: done singly, the bad one is found. */
async function oneByOneIfLost(
  tasks: readonly Task[],
  run: (tasks: readonly Task[]) => Promise<readonly Done[]>,
): Promise<readonly Done[]> {
  try {
    return await run(tasks);
  } catch (error) {
    const [task] = tasks;
    if (task === undefined) return [];
    if (tasks.length === 1) return [lost(task, error)];
    const done: Done[] = [];
    for (const one of tasks) done.push(...(await oneByOneIfLost([one], run)));
    return done;
  }
}

function lost({ file }: Task, error: unknown): Done {
  const reason = error instanceof Error ? error.message : String(error);
  const message = `${file} ended the thread that worked on it (${reason}). Look at the file by itself.`;
  return { line: { line: "error", file, code: "thread-lost", message } };
}
