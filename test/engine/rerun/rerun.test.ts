import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { valuesOf } from "../../../engine/book/values.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { JobLine, Line } from "../../../engine/rerun/lines.js";
import { rerun } from "../../../engine/rerun/rerun.js";
import { modelOf } from "../../../engine/template/models.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { fenceBook, fenceIdentity, fenceJob } from "../../support/fence.js";
import {
  fenceFour,
  fenceThree,
  fenceTrade,
  folder,
  lackingBook,
  nextBook,
  options,
  writeJob,
} from "./old-fence.js";

async function linesOf(named: string[], more: Parameters<typeof options>[1] = {}): Promise<Line[]> {
  const lines: Line[] = [];
  await rerun(fenceTrade, undefined, options(named, more), { line: (line) => lines.push(line) });
  return lines;
}

const jobsIn = (lines: readonly Line[]) =>
  lines
    .filter((line): line is JobLine => line.line === "job")
    .sort((a, b) => (a.file < b.file ? -1 : 1));

/** The price by both evaluators, worked out from the record alone. */
function priceOf(template = fenceThree, book = nextBook, job = fenceJob): number {
  const model = modelOf(template, "us");
  const values = calculate(model, valuesOf(model, { ...job, version: template.version }, book));
  return values[model.byId.get("price")?.index as number] as number;
}

/** The job of the tests as a workbook, priced by the old book. */
async function writeFence(path: string): Promise<void> {
  const model = modelOf(fenceThree, "us");
  const values = calculate(model, valuesOf(model, fenceJob, fenceBook));
  await writeFile(path, await writeWorkbook(model, values, fenceIdentity(model)));
}

test("a record is calculated under its own book and the new one", async () => {
  const into = await folder();
  await writeJob(into, "F-1");
  const [line] = jobsIn(await linesOf([into]));
  expect(line).toMatchObject({
    job: "F-1",
    source: "record",
    before: { price: priceOf(fenceThree, fenceBook), from: "own office book" },
    now: { price: priceOf() },
    expired: [{ code: "paint", goodUntil: "2026-02-01" }],
    failing: [
      {
        name: "takeoff.quoted",
        before: "passed",
        message: "The quote for paint has expired: ask again",
      },
    ],
  });
  expect(line).not.toHaveProperty("inError");
});

test("a workbook gives what it said, and the same new price as the record", async () => {
  const into = await folder();
  await writeFence(join(into, "fence.xlsx"));
  const before = await readFile(join(into, "fence.xlsx"));
  const [line] = jobsIn(await linesOf([into]));
  expect(line).toMatchObject({
    source: "workbook",
    before: { price: priceOf(fenceThree, fenceBook), from: "workbook" },
    now: { price: priceOf() },
    failing: [{ name: "takeoff.quoted", before: "passed" }],
  });
  expect(await readFile(join(into, "fence.xlsx"))).toEqual(before);
});

test("a job of version 3 gives version 3's figures after version 4 exists", async () => {
  const into = await folder();
  await writeJob(into, "old");
  await writeJob(into, "young", { version: 4 });
  const lines = jobsIn(await linesOf([into]));
  expect(lines.map(({ version, by, now }) => [version, by, now.price])).toEqual([
    [3, 3, priceOf(fenceThree)],
    [4, 4, priceOf(fenceFour)],
  ]);
  expect(priceOf(fenceThree)).not.toBe(priceOf(fenceFour));
});

test("--template-version newest brings records and workbooks over, and names the inputs left out", async () => {
  const into = await folder();
  await writeJob(into, "record", { inputs: { ...fenceJob.inputs, colour: "green" } });
  await writeFence(join(into, "workbook.xlsx"));
  const lines = jobsIn(await linesOf([into], { versions: "newest" }));
  expect(lines.map(({ version, by, now, leftOut }) => [version, by, now.price, leftOut])).toEqual([
    [3, 4, priceOf(fenceFour), ["colour"]],
    [3, 4, priceOf(fenceFour), ["colour"]],
  ]);
});

test("a book that lacks an item makes the job's price an error with its cell, and stops no other", async () => {
  const into = await folder();
  await writeJob(into, "F-1");
  const lines = await linesOf([into], { office: "lacking-book" });
  const [line] = jobsIn(lines);
  expect(line?.now.price).toBe("#N/A (from takeoff.each[2])");
  expect(line?.missing).toEqual({ codes: ["board"], checks: [] });
  // the quote for paint has expired as well
  expect(line?.failing.map(({ name }) => name)).toEqual(["takeoff.quoted"]);
  expect(line?.inError?.roots[0]).toEqual({ name: "takeoff.each[2]", error: "#N/A" });
  expect(line?.inError?.cells).toBeGreaterThan(3);
  expect(lackingBook.tables.items).toHaveLength(3);
});

test("files that cannot be read are told with their reason; the others are done", async () => {
  const into = await folder();
  await writeJob(into, "good");
  await writeFile(join(into, "a-broken.json"), "{");
  await writeFile(join(into, "b-list.json"), "[1]");
  await writeFile(join(into, "c-other.json"), '{"template":"pergola"}');
  await writeFile(join(into, "d-not.xlsx"), "not a zip");
  await writeJob(into, "e-version", { version: 9 });
  await writeJob(into, "f-invalid", { inputs: { ...fenceJob.inputs, height: 99 } });
  await writeFile(join(into, "~$open.xlsx"), "");
  const lines = await linesOf([into]);
  const errors = lines.flatMap((line) => (line.line === "error" ? [line] : []));
  expect(errors.map(({ file, code }) => [file.slice(into.length + 1), code]).sort()).toEqual([
    ["a-broken.json", "json-broken"],
    ["b-list.json", "job-invalid"],
    ["c-other.json", "template-unknown"],
    ["d-not.xlsx", "workbook-kind"],
    ["e-version.json", "template-version"],
    ["f-invalid.json", "job-invalid"],
  ]);
  // results come as they are done, in no order
  const invalid = errors.find(({ code, file }) => code === "job-invalid" && /f-inv/.test(file));
  expect(invalid?.message).toMatch(/height is 99, but must be <= 12/);
  expect(jobsIn(lines)).toHaveLength(1);
  expect(lines.at(-1)).toEqual({ line: "end", jobs: 1, errors: 6, skipped: 0, judged: 0 });
});

test.each([
  [{ office: undefined }, /names no office book/],
  [{ office: "gone-book" }, /its office book: .*gone-book/],
])("a record whose old prices are not known says so: %o", async (more, reason) => {
  const into = await folder();
  const path = await writeJob(into, "F-1");
  const record = { ...JSON.parse(await readFile(path, "utf8")), ...more };
  await writeFile(path, JSON.stringify(record));
  const [line] = jobsIn(await linesOf([into]));
  expect(line?.before).toEqual({ unknown: expect.stringMatching(reason) });
  expect(line?.failing).toMatchObject([{ name: "takeoff.quoted", before: "unknown" }]);
});

test("of several files with one job number the first counts", async () => {
  const into = await folder();
  await writeJob(into, "a", { job: "7" });
  await writeJob(into, "b", { job: "7" });
  await writeJob(into, "c");
  const outcome = await rerun(fenceTrade, undefined, options([into]));
  expect(outcome.duplicates).toEqual([
    { job: "7", files: [join(into, "a.json"), join(into, "b.json")] },
  ]);
  expect(outcome.totals).toMatchObject({ jobs: 3, compared: 2, duplicates: 1 });
  expect(outcome.totals.price.now).toBeCloseTo(2 * priceOf(), 8);
});

test.each([
  ["price>=4000", 1],
  ["price<4000", 0],
  ["bid_date>=2026-05-04", 1],
  ["bid_date<2026-05-04", 0],
  ["soil=clay", 1],
  ["soil!=clay", 0],
  ["job~f-", 1],
  ["version=3", 1],
  ["colour=green", 0],
])("the filter %s lets %i jobs pass", async (filter, jobs) => {
  const into = await folder();
  await writeJob(into, "F-1");
  const lines = await linesOf([into], { filters: [filter] });
  expect(jobsIn(lines)).toHaveLength(jobs);
  expect(lines.at(-1)).toMatchObject({ jobs, skipped: 1 - jobs });
});

test.each([
  ["prise>1", /"prise", which no template has.*price/],
  ["price", /must be a name, an operator/],
])("the filter %s is refused", async (filter, message) => {
  await expect(linesOf(["."], { filters: [filter] })).rejects.toThrow(message);
});

test("what moved the price: one at a time, the rest together, and all of it", async () => {
  const into = await folder();
  await writeJob(into, "F-1");
  await writeFence(join(into, "fence.xlsx"));
  for (const { moved, now, before } of jobsIn(await linesOf([into], { moved: true }))) {
    const from = "unknown" in before ? 0 : (before.price as number);
    expect(moved).toMatchObject({ from, to: now.price, items: [{ item: "items.post" }] });
    // 8 + 5 + 3 posts at 3.65 more each, with the margin of 20 % on the price
    expect(moved?.items[0]?.by).toBeCloseTo((16 * (25 - 21.35)) / 0.8, 8);
    expect(moved?.together).toBeCloseTo(0, 8);
  }
});
