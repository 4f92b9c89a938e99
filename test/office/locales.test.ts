import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { agree, heldBy } from "../../engine/audit/subject.js";
import { calculate } from "../../engine/evaluate/calculate.js";
import type { JobRecord } from "../../engine/job/record.js";
import { takeWorkbook } from "../../engine/take/take.js";
import { modelOf } from "../../engine/template/models.js";
import { matchWorkbook } from "../../engine/workbook/match/match.js";
import { readWorkbookFile } from "../../engine/workbook/read/read-file.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity, fenceJob } from "../support/fence.js";
import { fenceTrail } from "../support/fence-bid.js";
import { takeSteps } from "./soffice.js";
import type { Step } from "./steps.js";

// A workbook opened where a comma divides the decimals, typed into as a person there does, saved and taken back.

const model = modelOf(fence, "us");
const record: JobRecord = { ...fenceJob, trail: fenceTrail };
let folder: string;
let made: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-locales-"));
  made = join(folder, "made.xlsx");
  const values = calculate(model, fenceGiven(model, record));
  await writeFile(
    made,
    await writeWorkbook(model, values, { ...fenceIdentity(model), trail: fenceTrail }),
  );
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** What is typed, input by input, and the value that it stands for. */
const typed = (date: string): [string, string, number | string][] => [
  ["height", "2,5", 2.5],
  ["bid_date", date, "2026-03-14"],
  ["margin", "23,5%", 0.235],
  ["wind", "100,25", 100.25],
  ["runs.run[2]", "41,3", 41.3],
  ["runs.label[3]", "Tor 2,5", "Tor 2,5"],
  ["runs.run[3]", "17,75", 17.75],
  ["paint.coats[3]", "3", 3],
];

const steps = (keys: readonly [string, string, unknown][]): Step[] =>
  keys.map(([name, text]) => ({ kind: "type", name, keys: text }));

const locales: [string, string][] = [
  ["de-DE", "14.03.2026"],
  ["fr-FR", "14/03/2026"],
];

test.each(locales)("typed under %s, taken back: the same values", async (locale, date) => {
  const keys = typed(date);
  const out = join(folder, `${locale}.xlsx`);
  await takeSteps(made, steps(keys), out, locale);
  const content = await readWorkbookFile(out, { look: true });
  const taker = { by: "A", time: "2027-03-15T05:06:07.089Z" };
  const into = { record, file: "job.json" };
  const { job, entries, findings } = takeWorkbook(content, [fence], out, taker, into);
  expect(findings).toEqual([]);
  expect(Object.fromEntries(entries.map((one) => [one.input, one.new]))).toEqual(
    Object.fromEntries(keys.map(([name, , value]) => [name, value])),
  );
  // what LibreOffice made of the formulas is what the job gives
  const values = calculate(model, fenceGiven(model, job));
  const { at } = matchWorkbook(content, model);
  const differing = model.order.flatMap((cell) => {
    const shown = heldBy(cell, at.get(cell.id)?.cell.value ?? null);
    return agree(shown, values[cell.index] ?? null) ? [] : [[cell.id, shown, values[cell.index]]];
  });
  expect(differing).toEqual([]);
  const audit = await auditWorkbook(content, [fence]);
  const changed = new Set(keys.map(([name]) => name));
  expect(
    audit.findings.filter(({ name, grade }) => grade !== "to know" && !changed.has(name ?? "")),
  ).toEqual([]);
});

test("the same keys under a locale with points are other values: the locale is what makes them", async () => {
  const out = join(folder, "en-US.xlsx");
  await takeSteps(made, steps([["height", "2,5", 2.5]]), out, "en-US");
  const content = await readWorkbookFile(out);
  const cell = matchWorkbook(content, model).at.get("height")?.cell;
  expect(cell?.value).not.toBe(2.5);
});
