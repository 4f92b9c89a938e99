import { expect, test, vi } from "vitest";
import * as agree from "../../../engine/evaluate/agree.js";
import type { ResultLine } from "../../../engine/rerun/lines.js";
import { rerun } from "../../../engine/rerun/rerun.js";
import type { Done, Task } from "../../../engine/rerun/rerun-one.js";
import { runAll, tasksFor } from "../../../engine/rerun/run.js";
import type { Workers } from "../../../engine/rerun/workers.js";
import { fenceTrade, folder, options, writeJob } from "./old-fence.js";

vi.mock(import("../../../engine/evaluate/agree.js"), async (original) => {
  const real = await original();
  return { ...real, firstDifference: vi.fn(real.firstDifference) };
});

test("where the two evaluators differ, the run stops and names job and cell", async () => {
  const into = await folder();
  await writeJob(into, "F-1");
  vi.mocked(agree.firstDifference).mockImplementationOnce((model) => model.byId.get("price"));
  const run = rerun(fenceTrade, undefined, options([into]));
  await expect(run).rejects.toMatchObject({
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
