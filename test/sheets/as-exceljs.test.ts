import { basename } from "node:path";
import { expect, test } from "vitest";
import { identityOf } from "../../engine/book/identity-of.js";
import { loadJob } from "../../engine/book/load-job.js";
import { valuesOf } from "../../engine/book/values.js";
import { calculateFast } from "../../engine/evaluate/calculate.js";
import type { Value } from "../../engine/formula/value.js";
import type { Model } from "../../engine/template/model.js";
import { templates } from "../../sheets/templates/index.js";
import { demoJobs } from "../support/demo.js";
import { randomJob } from "../support/random-job.js";
import { mustBeAsExceljs } from "../support/through-exceljs.js";

type Given = (model: Model, given: readonly Value[]) => readonly Value[];

const whole: Given = (_, given) => given;
/** Every other input not given yet. */
const half: Given = (model, given) =>
  given.map((value, i) =>
    i % 2 === 0 && model.cells[i]?.declaration.kind === "input" ? null : value,
  );

// exceljs takes several times as long as our own writer: each demo is tried once, in each system one is whole
const jobs: readonly (readonly [name: string, how: string, given: Given])[] = [
  ["bubbling-stones", "whole", whole],
  ["garden-corner", "half given", half],
  ["hillside-stream", "whole", whole],
  ["metric-terrace", "whole", whole],
  ["side-yard", "half given", half],
];

const fileOf = (name: string) =>
  demoJobs().find((one) => basename(one) === `${name}.json`) as string;

test("every demo is tried", () => {
  expect(jobs.map(([name]) => `${name}.json`).sort()).toEqual(
    demoJobs()
      .map((file) => basename(file))
      .sort(),
  );
});

test.each(jobs)("%s, %s, is spelled part by part as exceljs does", async (name, _, change) => {
  const loaded = await loadJob(fileOf(name), templates);
  const { model } = loaded;
  const given = change(model, loaded.given);
  await mustBeAsExceljs(model, calculateFast(model, given), identityOf(loaded));
});

test("so is a random job", async () => {
  const { model, book } = await loadJob(fileOf("garden-corner"), templates);
  const job = randomJob(model, book, 1);
  const values = calculateFast(model, valuesOf(model, job, book));
  await mustBeAsExceljs(model, values, identityOf({ model, job, book }));
});
