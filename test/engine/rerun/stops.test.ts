import { appendFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import * as closures from "../../../engine/evaluate/closures.js";
import type { ResultLine } from "../../../engine/rerun/lines.js";
import { rerun } from "../../../engine/rerun/rerun.js";
import type { Done, Task } from "../../../engine/rerun/rerun-one.js";
import { runAll, tasksFor } from "../../../engine/rerun/run.js";
import type { Workers } from "../../../engine/rerun/workers.js";
import { fenceTrade, folder, options, writeJob } from "./old-fence.js";

vi.mock(import("../../../engine/evaluate/closures.js"), async (original) => {
  const real = await original();
  return { ...real, stepsAmong: vi.fn(real.stepsAmong) };
});

const { stepsAmong } = await vi.importActual<typeof closures>(
  "../../../engine/evaluate/closures.js",
);

test("where the two evaluators differ, the run stops and names job and cell", async () => {
  const into = await folder();
  for (const name of ["F-1", "F-2", "F-3"]) await writeJob(into, name);
  // the first is read last, and calculated first all the same
  await appendFile(join(into, "F-1.json"), " ".repeat(4_000_000));
  let calculated = 0;
  vi.mocked(closures.stepsAmong).mockImplementationOnce((model, cells) => {
    const steps = stepsAmong(model, cells);
    const price = cells.findIndex(({ id }) => id === "price");
    const run: typeof steps.run = (place, values) => {
      const value = steps.run(place, values);
      if (place !== price) return value;
      calculated += 1;
      return calculated === 1 ? (value as number) + 0.01 : value;
    };
    return { ...steps, run };
  });
  await expect(rerun(fenceTrade, undefined, options([into]))).rejects.toMatchObject({
    code: "evaluators-differ",
    exitStatus: 3,
    message: expect.stringMatching(/differ for .*F-1\.json in price on sheet Price/),
  });
});

/** Workers that answer at once, and keep count. */
function fake(answer: (task: Task) => Done) {
  let [busy, most] = [0, 0];
  const lists: number[] = [];
  const workers: Workers = {
    count: 2,
    run: async (tasks) => {
      busy += 1;
      most = Math.max(most, busy);
      lists.push(tasks.length);
      await new Promise((resolve) => setTimeout(resolve, 1));
      busy -= 1;
      return tasks.map(answer);
    },
    close: async () => undefined,
  };
  return { workers, lists, most: () => most };
}

const files = (count: number) => Array.from({ length: count }, (_, i) => `${i}.json`);
const line = (file: string): ResultLine => ({ line: "skipped", file, job: "" });
const never = new AbortController().signal;

test("the first three and one in so many are calculated twice", () => {
  const judged = tasksFor(files(500), new Map(), 200).flatMap((task, i) =>
    task.judged ? [i] : [],
  );
  expect(judged).toEqual([0, 1, 2, 200, 400]);
});

test("workers get a few lists at a time, and all files are done once", async () => {
  const { workers, lists, most } = fake(({ file }) => ({ line: line(file) }));
  const taken: string[] = [];
  const take = async (lines: readonly ResultLine[]) => {
    taken.push(...lines.map(({ file }) => file));
  };
  await runAll(tasksFor(files(1000), new Map(), 0), workers, take, () => undefined, never);
  expect(taken.sort()).toEqual(files(1000).sort());
  expect([most(), Math.max(...lists)]).toEqual([4, 16]);
});

test("it is told when nothing is left to begin, while the last lists are still under way", async () => {
  const taken: number[] = [];
  const { workers } = fake(({ file }) => ({ line: line(file) }));
  const take = async (lines: readonly ResultLine[]) => {
    taken.push(lines.length);
  };
  const sum = () => taken.reduce((all, count) => all + count, 0);
  let atDrained: number | undefined;
  const drained = () => {
    atDrained ??= sum();
  };
  const tasks = tasksFor(files(1000), new Map(), 0);
  await runAll(tasks, workers, take, () => undefined, never, drained);
  expect(atDrained).toBeGreaterThan(900);
  expect(sum()).toBe(1000);
});

test("a fault ends the run without doing the rest", async () => {
  const { workers, lists } = fake(() => ({ fault: "they differ" }));
  const run = runAll(
    tasksFor(files(1000), new Map(), 0),
    workers,
    async () => undefined,
    () => undefined,
    never,
  );
  await expect(run).rejects.toThrow("they differ");
  expect(lists.length).toBeLessThan(8);
});
