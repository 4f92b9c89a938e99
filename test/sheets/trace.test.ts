import { join } from "node:path";
import { expect, test } from "vitest";
import { openJob } from "../../engine/audit/open.js";
import { shown } from "../../engine/job/shown-value.js";
import type { Cell } from "../../engine/template/model.js";
import { originsOf } from "../../engine/trace/job-origins.js";
import type { TraceNode } from "../../engine/trace/node.js";
import { trace } from "../../engine/trace/trace.js";
import { templates } from "../../sheets/templates/index.js";
import { demoFolder } from "../support/demo.js";
import { bodiesOf, evaluatePrinted } from "../support/evaluate-printed.js";

function* nodes(node: TraceNode): Generator<TraceNode> {
  yield node;
  for (const part of node.parts) yield* nodes(part);
}

test("the price of a demo job, opened to the last input: the numbers of each level give its result", {
  timeout: 120_000,
}, async () => {
  const job = await openJob(join(demoFolder, "garden-corner.json"), templates);
  const { model, values } = job;
  const root = trace(
    { model, values, origins: originsOf(job) },
    model.byId.get("price") as Cell,
    50,
  );
  const bodies = bodiesOf(model);
  const wrong: string[] = [];
  let checked = 0;
  for (const { name, numbers, shown: printed } of nodes(root)) {
    const home = model.byId.get(name);
    if (numbers === undefined || home === undefined) continue;
    const found = shown(model, home, evaluatePrinted(numbers, bodies));
    if (found !== printed) wrong.push(`${name}: ${numbers} gives ${found}, not ${printed}`);
    checked += 1;
  }
  expect(wrong).toEqual([]);
  expect(checked).toBeGreaterThan(300);
});

test("every leaf of it tells where it comes from", { timeout: 120_000 }, async () => {
  const job = await openJob(join(demoFolder, "garden-corner.json"), templates);
  const { model, values } = job;
  const root = trace(
    { model, values, origins: originsOf(job) },
    model.byId.get("price") as Cell,
    9,
  );
  const silent = [...nodes(root)].filter(
    ({ kind, origin }) => ["input", "book", "published"].includes(kind) && origin === undefined,
  );
  expect(silent).toEqual([]);
});
