import { rm } from "node:fs/promises";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { valuesOf } from "../../../engine/book/values.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { narrowed } from "../../../engine/evaluate/narrowed.js";
import { CellError } from "../../../engine/formula/value.js";
import { modelOf } from "../../../engine/template/models.js";
import type * as DrawThreads from "../../../engine/weigh/draw-threads.js";
import { blockSize, type DrawTask, sentValue } from "../../../engine/weigh/draws.js";
import { compiled } from "../../support/compiled.js";
import { fence, fenceBook, fenceJob } from "../../support/fence.js";

// threads load built code
test("one, two and three threads draw the same, errors too", async () => {
  const folder = await compiled("engine/weigh/draw-threads.ts", "engine/weigh/draw-thread.ts");
  try {
    const path = join(folder, "engine/weigh/draw-threads.js");
    const { allDraws } = (await import(pathToFileURL(path).href)) as typeof DrawThreads;
    const model = modelOf(fence, "us");
    const values = calculate(model, valuesOf(model, fenceJob, fenceBook));
    const index = (name: string) => model.byId.get(name)?.index as number;
    const changing = new Set([index("height"), index("margin")]);
    const task: DrawTask = {
      narrowed: narrowed(model, ["price"], changing, values),
      values: values.with(0, new CellError("#N/A", "height")).map(sentValue),
      cost: index("price"),
      inputs: [
        { index: index("height"), range: { low: 5, likely: 5.5, high: 7 }, whole: false },
        // one in a few leaves nothing to divide by
        { index: index("margin"), range: { low: 0, likely: 0, high: 1.4 }, whole: true },
      ],
      ...{ draws: 12 * blockSize + 3, seed: 8 },
    };
    const [one, ...others] = await Promise.all([1, 2, 3].map((wanted) => allDraws(task, wanted)));
    const flat = one?.flatMap((block) => [...block]) ?? [];
    expect(flat).toHaveLength(task.draws);
    const failed = flat.filter(Number.isNaN).length;
    expect(failed).toBeGreaterThan(100);
    expect(failed).toBeLessThan(task.draws / 2);
    for (const other of others) expect(other).toEqual(one);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});
