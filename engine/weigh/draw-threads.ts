import { availableParallelism } from "node:os";
import { Piscina } from "piscina";
import { blocksOf, Drawer, type DrawTask } from "./draws.js";

/** So many blocks are drawn in one thread before another one is ready. */
const fewBlocks = 4;

/**
 * All draws, block after block, the same for any number of threads.
 * @param wanted how many threads at most; 0: one for each processor; 1: in this one
 */
export async function allDraws(task: DrawTask, wanted: number): Promise<Float64Array[]> {
  const blocks = Array.from({ length: blocksOf(task) }, (_, place) => place);
  const most = Math.max(1, Math.floor(blocks.length / fewBlocks));
  const threads = Math.min(wanted === 0 ? availableParallelism() : wanted, most);
  if (threads === 1) {
    const drawer = new Drawer(task);
    return blocks.map((place) => drawer.block(place));
  }
  const pool = new Piscina<number, Float64Array>({
    filename: new URL("../weigh/draw-thread.js", import.meta.url).href,
    workerData: task,
    minThreads: threads,
    maxThreads: threads,
  });
  try {
    return await Promise.all(blocks.map((place) => pool.run(place)));
  } finally {
    await pool.destroy();
  }
}
