import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import exceljs from "exceljs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openJob } from "../../../engine/audit/index.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { verifyTrail } from "../../../engine/job/trail/verify.js";
import { validateJob } from "../../../engine/job/validate.js";
import { valuesAsGiven } from "../../../engine/job/values.js";
import { oldWorkbook } from "../../../engine/rerun/workbook-job.js";
import { takeAnew } from "../../../engine/take/anew.js";
import { reopened } from "../../../engine/take/reopen.js";
import { takeWorkbook } from "../../../engine/take/take.js";
import { modelOf } from "../../../engine/template/models.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity } from "../../support/fence.js";
import { fenceModel, fenceRecord, fenceWorkbook } from "../../support/fence-bid.js";
import { fenceThree } from "../rerun/old-fence.js";

// exceljs drops custom properties by saving: what can be read of the bid without them is read

const taker = { by: "Office", time: "2026-06-01T09:00:00.000Z" };
let folder: string;
let saved: Uint8Array;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-lost-"));
  const from = fenceModel.byId.get("runs.run[1]");
  saved = await dropped(await fenceWorkbook(), (workbook) => {
    const cell = workbook
      .getWorksheet(from?.sheet ?? "")
      ?.getCell(from?.line ?? 0, from?.column ?? 0);
    if (cell === undefined) throw new Error("The fence has no first run.");
    cell.value = 51.7;
  });
});
afterAll(() => rm(folder, { recursive: true }));

test("taken into the record that it was written from, against which it is held", () => {
  const into = { record: fenceRecord, file: "fence.json" };
  const { entries } = takeWorkbook(readWorkbook(saved), [fence], "fence.xlsx", taker, into);
  expect(entries).toEqual([
    expect.objectContaining({ input: "runs.run[1]", old: 61.7, new: 51.7 }),
  ]);
});

test("not into a record that has gone its own way", () => {
  const trail = fenceRecord.trail.slice(0, -1);
  const inputs = { ...fenceRecord.inputs, height: 6 };
  const into = { record: { ...fenceRecord, trail, inputs }, file: "fence.json" };
  expect(() => takeWorkbook(readWorkbook(saved), [fence], "fence.xlsx", taker, into)).toThrow(
    /height is 6 in fence\.json/,
  );
});

test("not into a new record, of which nothing could be shown: told what to do", () => {
  expect(() => takeWorkbook(readWorkbook(saved), [fence], "fence.xlsx", taker)).toThrow(
    /has lost its custom properties.*rillbook take fence\.xlsx -o <job record>/,
  );
});

test("bid says the cause and both ways on", () => {
  expect(() => reopened(readWorkbook(saved), [fence], "fence.xlsx", taker)).toThrow(
    /^fence\.xlsx has lost its custom properties.*take fence\.xlsx -o <job record>.*take fence\.xlsx --template fence -o fence\.json/,
  );
});

describe("into a new record, by the template that a person names", () => {
  const bookNamed = (name: string) => () => ({ tables: {}, name });
  const confirmed = { template: "fence", book: bookNamed(fenceIdentity(fenceModel).book) };

  test("all that is no default is told as found, and the trail begins", () => {
    const { job, entries } = takeAnew(readWorkbook(saved), [fence], "f.xlsx", taker, confirmed);
    expect(entries).toContainEqual(
      expect.objectContaining({ input: "runs.run[1]", old: null, new: 51.7 }),
    );
    expect(new Set(entries.map(({ from }) => from))).toEqual(new Set(["changed in the workbook"]));
    expect(entries.every(({ note }) => note?.includes("trail begun anew"))).toBe(true);
    expect(verifyTrail(job.trail ?? [])).toEqual([]);
    const asWas = { ...fenceRecord, inputs: fenceRecord.inputs };
    const expected = [...valuesAsGiven(fenceModel, validateJob(fenceModel, asWas, "f"))];
    expected[fenceModel.byId.get("runs.run[1]")?.index as number] = 51.7;
    expect(valuesAsGiven(fenceModel, job)).toEqual(expected);
  });

  test.each([
    ["another template", { ...confirmed, template: "wall" }, /says "wall".*says "fence"/],
    ["another office book", { ...confirmed, book: bookNamed("2031") }, /office book ".*--office/],
  ])("not with %s than the first sheet says", (_, said, sentence) => {
    expect(() => takeAnew(readWorkbook(saved), [fence], "f.xlsx", taker, said)).toThrow(sentence);
  });

  test("not of a workbook that says all that itself", async () => {
    const whole = readWorkbook(await fenceWorkbook());
    expect(() => takeAnew(whole, [fence], "f.xlsx", taker, confirmed)).toThrow(
      /Leave --template and --office out/,
    );
  });
});

test("shown and traced as any other", async () => {
  const file = join(folder, "saved.xlsx");
  await writeFile(file, saved);
  const opened = await openJob(file, [fence]);
  const run = fenceModel.byId.get("runs.run[1]")?.index as number;
  expect(opened.values[run]).toBe(51.7);
  expect(opened.job).toBe(fenceRecord.job);
});

test("calculated again as any other old job", async () => {
  const model = modelOf(fenceThree, "us");
  const values = calculate(model, fenceGiven(model));
  const bytes = await writeWorkbook(model, values, fenceIdentity(model));
  const old = oldWorkbook(Buffer.from(await dropped(bytes)), "saved.xlsx", [fenceThree]);
  expect(old.job).toBe(fenceRecord.job);
  const height = model.byId.get("height")?.index as number;
  expect(old.inputs(model, { tables: {} }).values[height]).toBe(values[height]);
});

/** Saved by exceljs, after a change. */
async function dropped(
  bytes: Uint8Array,
  change: (workbook: exceljs.Workbook) => void = () => {},
): Promise<Uint8Array> {
  const workbook = new exceljs.Workbook();
  await workbook.xlsx.load(Buffer.from(bytes) as unknown as ArrayBuffer);
  change(workbook);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}
