import { availableParallelism } from "node:os";
import { Piscina } from "piscina";
import { type Asked, type Done, Rerunner, type Task } from "./rerun-one.js";
import { beginLarger } from "./thread-heap.js";
import type { Trade } from "./trade.js";

/** Where tasks are done: worker threads, or this thread. */
export interface Workers {
  /** How many lists of tasks are done at a time. */
  readonly count: number;
  /** Does tasks in one of them, by its place from 0. */
  readonly run: (tasks: readonly Task[], place: number) => Promise<readonly Done[]>;
  readonly close: () => Promise<void>;
}

/** Old space of a thread, MB: a job needs a hundredth, and what may pile up between two sweeps is kept small. */
const threadMemory = 300;
/** What is made and dropped at once, MB: more of it is swept more seldom, and takes more memory. */
const threadYoung = 24;
/** So few files are done in one thread before another one is ready. */
const fewFiles = 4;

/** In this thread, one list after another, whichever file the system reads first. */
export function inThisThread(trade: Trade, asked: Asked): Workers {
  const rerunner = new Rerunner(trade, asked);
  let last: Promise<unknown> = Promise.resolve();
  return {
    count: 1,
    run: (tasks) => {
      const done = last.then(() => rerunner.run(tasks));
      last = done.catch(() => undefined);
      return done;
    },
    close: async () => undefined,
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
 * @param wanted how many at most; 0: one for each processor
 * @param files how many there are to do: a thread more is worth its start from a few files on
 */
export function inThreads(
  sources: TemplateSources,
  asked: Asked,
  wanted: number,
  files: number,
): Workers {
  const most = Math.max(1, Math.ceil(files / fewFiles));
  const count = Math.min(wanted === 0 ? availableParallelism() : wanted, most);
  beginLarger();
  // a pool for each thread: what one of them has made ready, no other makes again
  const pools = Array.from({ length: count }, () => pool(sources, asked));
  return {
    count,
    run: (tasks, place) =>
      oneByOneIfLost(tasks, (some) => (pools[place] as (typeof pools)[number]).run(some)),
    close: async () => {
      await Promise.all(pools.map((one) => one.destroy()));
    },
  };
}

const pool = (sources: TemplateSources, asked: Asked) =>
  new Piscina<readonly Task[], Done[]>({
    filename: new URL("../rerun/worker.js", import.meta.url).href,
    workerData: { ...sources, asked },
    minThreads: 1,
    maxThreads: 1,
    resourceLimits: { maxOldGenerationSizeMb: threadMemory, maxYoungGenerationSizeMb: threadYoung },
  });

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
