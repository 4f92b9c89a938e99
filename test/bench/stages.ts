import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { fillBook } from "../../engine/book/fill.js";
import type { OfficeBook } from "../../engine/book/office-book.js";
import { calculateFast } from "../../engine/evaluate/calculate.js";
import { Cone } from "../../engine/evaluate/cone.js";
import { mustBear, questionsOfAll } from "../../engine/evaluate/judge-parts.js";
import { judgedValues } from "../../engine/evaluate/judge-sheets.js";
import type { Value } from "../../engine/formula/value.js";
import { rawJob } from "../../engine/job/read.js";
import { validateJob } from "../../engine/job/validate.js";
import { inputValues } from "../../engine/job/values.js";
import { oldWorkbook } from "../../engine/rerun/workbook-job.js";
import type { Model } from "../../engine/template/model.js";
import { rolesOf } from "../../engine/template/role-plan.js";
import type { Template } from "../../engine/template/template.js";
import { KeptParts } from "../../engine/workbook/read/kept-parts.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { figure, type Table } from "./table.js";

const rounds = 3;

/** Where the time of a job goes, in ms a job in one thread, the first round left out. */
export async function stages(
  model: Model,
  book: OfficeBook,
  templates: readonly Template[],
  records: readonly string[],
  workbooks: readonly string[],
): Promise<Table> {
  const spent = await timeOf(model, book, templates, records, workbooks);
  return {
    title: "Where the time goes",
    note: "In one thread, the first of three rounds left out.",
    heads: ["Stage", "ms a job"],
    rows: [...spent].map(([stage, ms]) => [stage, figure(ms)]),
  };
}

async function timeOf(
  model: Model,
  book: OfficeBook,
  templates: readonly Template[],
  records: readonly string[],
  workbooks: readonly string[],
): Promise<Map<string, number>> {
  const spent = new Map<string, number>();
  const timed = <T>(stage: string, jobs: number, keep: boolean, work: () => T): T => {
    const begun = performance.now();
    const result = work();
    const each = (performance.now() - begun) / jobs / (rounds - 1);
    if (keep) spent.set(stage, (spent.get(stage) ?? 0) + each);
    return result;
  };
  const cone = new Cone(model, rolesOf(model).targets);
  const kept = new KeptParts();
  for (let round = 0; round < rounds; round++) {
    for (const path of records) {
      const step = <T>(stage: string, work: () => T) =>
        timed(`record: ${stage}`, records.length, round > 0, work);
      const bytes = await readFile(path);
      step("mark (SHA-256)", () => createHash("sha256").update(bytes).digest("hex"));
      const raw = step("parse JSON", () => rawJob(bytes.toString("utf8"), templates, path));
      const job = step("validate", () => validateJob(model, raw.record, path));
      const values = step("inputs", () => inputValues(model, job));
      step("prices", () => fillBook(model, values, book));
      step("calculate what is looked at (what differs from the job before)", () =>
        cone.calculate(values),
      );
      step("calculate every cell (for comparison)", () => calculateFast(model, values));
    }
    for (const path of workbooks) {
      const bytes = await readFile(path);
      const step = <T>(stage: string, work: () => T) =>
        timed(`workbook: ${stage}`, workbooks.length, round > 0, work);
      step("read the sheets needed", () => oldWorkbook(bytes, path, templates, { kept }));
      step("read all sheets (for comparison)", () => readWorkbook(bytes));
    }
  }
  await judgeStage(model, book, records.slice(0, 4), templates, spent);
  return spent;
}

async function judgeStage(
  model: Model,
  book: OfficeBook,
  paths: readonly string[],
  templates: readonly Template[],
  spent: Map<string, number>,
): Promise<void> {
  const all: Value[][] = [];
  for (const path of paths) {
    const raw = rawJob(await readFile(path, "utf8"), templates, path);
    const values = inputValues(model, validateJob(model, raw.record, path));
    fillBook(model, values, book);
    all.push(values);
  }
  const cells = new Cone(model, rolesOf(model).targets).cells;
  const claims = all.map((given) => ({ model, values: calculateFast(model, given), cells }));
  const begun = performance.now();
  const questions = questionsOfAll(claims);
  mustBear(questions, judgedValues(questions.task()));
  spent.set(
    "second evaluator: one of four jobs asked together",
    (performance.now() - begun) / all.length,
  );
}
