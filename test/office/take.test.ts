import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { calculate } from "../../engine/evaluate/calculate.js";
import type { Value } from "../../engine/formula/value.js";
import type { JobRecord } from "../../engine/job/record.js";
import { appended } from "../../engine/job/trail/chain.js";
import { verifyTrail } from "../../engine/job/trail/verify.js";
import { takeWorkbook } from "../../engine/take/take.js";
import type { Cell } from "../../engine/template/model.js";
import { modelOf } from "../../engine/template/models.js";
import { matchWorkbook } from "../../engine/workbook/match/match.js";
import type { WorkbookContent } from "../../engine/workbook/read/content.js";
import { readWorkbookFile } from "../../engine/workbook/read/read-file.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity, fenceJob } from "../support/fence.js";
import { recalculate, takeSteps } from "./soffice.js";
import type { Step } from "./steps.js";

const model = modelOf(fence, "us");
const time = "2026-03-04T05:06:07.089Z";
const trail = appended(
  [],
  [
    {
      time,
      by: "B",
      input: "height",
      old: 4,
      new: 5.5,
      unit: "ft",
      from: "drawing",
      note: "sheet 2",
    },
  ],
);
const record: JobRecord = { ...fenceJob, trail };
const into = { record, file: "job.json" };
let folder: string;
let made: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-take-office-"));
  made = join(folder, "made.xlsx");
  const values = calculate(model, fenceGiven(model, record));
  await writeFile(made, await writeWorkbook(model, values, { ...fenceIdentity(model), trail }));
});
afterAll(() => rm(folder, { recursive: true }));

const take = (content: WorkbookContent) =>
  takeWorkbook(content, [fence], "bid.xlsx", { by: "A", time }, into);

/** Every calculated cell as LibreOffice shows it, beside the same cell of the job taken in. */
function figures(content: WorkbookContent, job: JobRecord): [string, unknown, unknown][] {
  const { at } = matchWorkbook(content, model);
  const values: readonly Value[] = calculate(model, fenceGiven(model, job));
  return model.order.map((cell) => [
    cell.id,
    counted(cell, rounded(at.get(cell.id)?.cell.value)),
    rounded(values[cell.index]),
  ]);
}
/** LibreOffice stores some results that are yes or no as 1 and 0. */
const counted = ({ declaration }: Cell, value: unknown): unknown =>
  declaration.quantity.kind === "yesno" && typeof value === "number" ? value === 1 : value;
const rounded = (value: unknown): unknown =>
  typeof value === "number" ? Number(value.toPrecision(12)) : value === null ? "" : value;

test("saved without a change: the same record, no entry, nothing found", async () => {
  const [saved = ""] = await recalculate([made], join(folder, "saved"));
  const content = await readWorkbookFile(saved);
  const { job, entries, findings } = take(content);
  expect([entries, findings]).toEqual([[], []]);
  expect(job).toEqual(record);
});

test("edited as an office would: the same figures, and every edit in the trail", async () => {
  const lineOf = (id: string) => model.byId.get(id)?.line as number;
  const steps: Step[] = [
    { kind: "set", name: "height", value: 6.25 },
    { kind: "set", name: "customer", value: "Customer Two" },
    { kind: "set", name: "margin", value: 0.235 },
    { kind: "set", name: "runs.run[2]", value: 41.3 },
    // a line above everything, then one within the table: the ranges grow by it
    { kind: "insert-row", sheet: "Site", row: 1 },
    { kind: "insert-row", sheet: "Runs", row: lineOf("runs.run[3]") },
    { kind: "set", name: "runs.label[5]", value: "west" },
    { kind: "set", name: "runs.run[5]", value: 17.75 },
    { kind: "set", name: "paint.coats[4]", value: 3 },
  ];
  const out = join(folder, "edited.xlsx");
  await takeSteps(made, steps, out);
  const content = await readWorkbookFile(out);
  const { job, entries, findings } = take(content);
  expect(findings).toEqual([]);
  expect(entries.map((one) => [one.input, one.old, one.new])).toEqual([
    ["customer", "Customer One", "Customer Two"],
    ["height", 5.5, 6.25],
    ["runs.label[4]", null, "west"],
    ["runs.run[2]", 33.25, 41.3],
    ["runs.run[4]", null, 17.75],
    ["paint.coats[4]", null, 3],
    ["margin", 0.2, 0.235],
  ]);
  expect(verifyTrail(job.trail ?? [])).toEqual([]);
  const shown = figures(content, job);
  expect(shown.map(([id, , ours]) => [id, ours])).toEqual(
    shown.map(([id, theirs]) => [id, theirs]),
  );
  expect(job.inputs.runs).toHaveLength(4);
});

test("a formula typed over in LibreOffice is named; the inputs are taken in all the same", async () => {
  const out = join(folder, "over.xlsx");
  await takeSteps(
    made,
    [
      { kind: "set", name: "wind", value: 100 },
      { kind: "set", name: "total_posts", value: 3 },
    ],
    out,
  );
  const content = await readWorkbookFile(out);
  const { job, findings } = take(content);
  expect(findings.map(({ code, name }) => [code, name])).toEqual([
    ["formula-overwritten", "total_posts"],
  ]);
  expect(job.inputs.wind).toBe(100);
});

test("a workbook made from the record taken in, saved again, audits as its own", async () => {
  const out = join(folder, "again-edited.xlsx");
  await takeSteps(made, [{ kind: "set", name: "height", value: 7.1 }], out);
  const { job } = take(await readWorkbookFile(out));
  const values = calculate(model, fenceGiven(model, job));
  const identity = { ...fenceIdentity(model), trail: job.trail ?? [] };
  const again = join(folder, "again.xlsx");
  await writeFile(again, await writeWorkbook(model, values, identity));
  const [saved = ""] = await recalculate([again], join(folder, "again"));
  const audit = await auditWorkbook(await readWorkbookFile(saved), [fence]);
  expect(audit.findings.filter(({ code }) => code === "trail" || code === "value-stale")).toEqual(
    [],
  );
});
