import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { addressOf } from "../../../engine/address.js";
import { run } from "../../../engine/cli/run.js";
import type { JobRecord } from "../../../engine/job/record.js";
import { verifyTrail } from "../../../engine/job/trail/verify.js";
import type { Cell } from "../../../engine/template/model.js";
import { modelOf } from "../../../engine/template/models.js";
import { fence, fenceJob } from "../../support/fence.js";

let folder: string;
let file: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-set-"));
  file = join(folder, "job.json");
  await writeFile(file, JSON.stringify(fenceJob));
});
afterEach(() => rm(folder, { recursive: true }));

/** Where a cell stands in the fence's workbook: `Price!B3`. */
function placeOf(id: string): string {
  const { sheet, column, line } = modelOf(fence, "us").byId.get(id) as Cell;
  return `${sheet}!${addressOf(column, line)}`;
}

const read = async (): Promise<JobRecord> => JSON.parse(await readFile(file, "utf8"));

async function set(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  let out = "";
  let err = "";
  const status = await run(
    ["set", file, "--by", "A. Estimator", "--from", "drawing", ...args],
    [fence],
    {
      out: (text) => {
        out += text;
      },
      err: (text) => {
        err += text;
      },
    },
  );
  return { status, out, err };
}

test.each<[string, string[], object, [string, unknown, unknown, string][]]>([
  ["a number", ["height=6.25"], { height: 6.25 }, [["height", 5.5, 6.25, "ft"]]],
  ["a length in another unit", ["height=72 in"], { height: 6 }, [["height", 5.5, 6, "ft"]]],
  ["feet and inches", ["height=6'3\""], { height: 6.25 }, [["height", 5.5, 6.25, "ft"]]],
  ["a metric length", ["height=2.4384 m"], { height: 8 }, [["height", 5.5, 8, "ft"]]],
  ["a percentage", ["margin=25%"], { margin: 0.25 }, [["margin", 0.2, 0.25, ""]]],
  [
    "a percentage as it is written",
    ["margin=7.65 %"],
    { margin: 0.0765 },
    [["margin", 0.2, 0.0765, ""]],
  ],
  ["no percent at all", ["margin=0"], { margin: 0 }, [["margin", 0.2, 0, ""]]],
  [
    "a text with =",
    ["customer=A = B"],
    { customer: "A = B" },
    [["customer", "Customer One", "A = B", ""]],
  ],
  [
    "a date",
    ["bid_date=2026-06-01"],
    { bid_date: "2026-06-01" },
    [["bid_date", "2026-05-04", "2026-06-01", ""]],
  ],
  [
    "a date with dots, its day first",
    ["bid_date=1.06.2026"],
    { bid_date: "2026-06-01" },
    [["bid_date", "2026-05-04", "2026-06-01", ""]],
  ],
  ["back to the default", ["height="], { height: null }, [["height", 5.5, 4, "ft"]]],
  ["the same value again", ["height=5.5"], { height: 5.5 }, [["height", 5.5, 5.5, "ft"]]],
  [
    "two in one go",
    ["height=6", "height=7"],
    { height: 7 },
    [
      ["height", 5.5, 6, "ft"],
      ["height", 6, 7, "ft"],
    ],
  ],
  [
    "a cell of a row",
    ["runs.run[2]=40"],
    {
      runs: [
        { label: "north", run: 61.7 },
        { label: "east", run: 40 },
        { label: "gate side", run: 12 },
      ],
    },
    [["runs.run[2]", 33.25, 40, "ft"]],
  ],
  [
    "a row below the last",
    ["runs.run[4]=9"],
    { runs: [...(fenceJob.inputs.runs as object[]), { run: 9 }] },
    [["runs.run[4]", null, 9, "ft"]],
  ],
  [
    "a row taken out from among others: those keep their names",
    ["runs[1]="],
    { runs: [null, ...(fenceJob.inputs.runs as object[]).slice(1)] },
    [
      ["runs.label[1]", "north", null, ""],
      ["runs.run[1]", 61.7, null, "ft"],
    ],
  ],
  [
    "the last row taken out",
    ["runs[3]="],
    { runs: (fenceJob.inputs.runs as object[]).slice(0, 2) },
    [
      ["runs.label[3]", "gate side", null, ""],
      ["runs.run[3]", 12, null, "ft"],
    ],
  ],
  [
    "a row of a table that the template fills",
    ["takeoff.code[2]=gate"],
    { takeoff: [{}, { code: "gate" }] },
    [["takeoff.code[2]", "board", "gate", ""]],
  ],
])("sets %s", async (_, args, inputs, entries) => {
  const { status, err } = await set(...args, "--note", "sheet 2");
  expect([status, err]).toEqual([0, ""]);
  const job = await read();
  expect(job.inputs).toEqual({ ...fenceJob.inputs, ...inputs });
  expect(job.trail?.map((one) => [one.input, one.old, one.new, one.unit])).toEqual(entries);
  expect(job.trail?.[0]).toMatchObject({ by: "A. Estimator", from: "drawing", note: "sheet 2" });
  expect(verifyTrail(job.trail ?? [])).toEqual([]);
});

test("adds to the trail that is there, and says what it did", async () => {
  await set("height=6");
  const { out } = await set("height=6.5", "--note", "seen\n again ");
  expect(out).toBe("height: 6.5 ft, was 6 ft (drawing, by A. Estimator: seen again)\n");
  const { trail } = await read();
  expect(trail?.map(({ number, old }) => [number, old])).toEqual([
    [1, 5.5],
    [2, 6],
  ]);
  expect(await readdir(folder)).toEqual(["job.json"]);
});

test.each<[string, string, RegExp]>([
  ["height=20", "job-invalid", /- height is 20, but must be <= 12 \(Height; in ft/],
  [
    "height=tall",
    "job-invalid",
    /- height is "tall", but must be a number of ft, without quotes \(/,
  ],
  // 24 in is 2 ft: no message may lead to 24 ft
  ["height=6 in", "job-invalid", /- height is 0\.5, but must be >= 1 \(Height; in ft/],
  ["height=24 gal", "unit-wrong", /^unit-wrong: height \(Height\): "24 gal" is in gal/],
  ["height=2'6", "measure-unclear", /height \(Height\): "2'6" can be read in two ways/],
  ["margin=0.0765", "percent-unclear", /may mean 7\.65% or 0\.0765%\. .* sign: margin=7\.65%\./],
  ["margin=7.65", "percent-unclear", /may mean 765% or 7\.65%\. .* sign: margin=7\.65%\./],
  ["margin=765%", "job-invalid", /margin is 7\.65 \(765%\), but must be <= 0\.9/],
  ["height=1e999", "job-invalid", /- height is "1e999"/],
  ["bid_date=2026-02-30", "job-invalid", /there is no such day/],
  ["soil=peat", "job-invalid", /must be one of: sand, loam, clay/],
  ["paint.coats[1]=1.5", "job-invalid", /- paint\.coats\[1\] is 1\.5, but must be a whole number/],
  ["hight=2", "name-unknown", /Did you mean "height"\?/],
  [
    "price=2",
    "name-no-input",
    /only inputs can be set\. Inputs nearest to it: margin; "rillbook weigh"/,
  ],
  [
    "total_posts=2",
    "name-no-input",
    /only inputs can be set\. See what moves it: "rillbook trace"/,
  ],
  [
    `${placeOf("height")}=2`,
    "assignment-unclear",
    /is the place of height \(Height\) in a workbook\. In a record give it by its name: height=value/,
  ],
  [`${placeOf("price")}=2`, "name-no-input", /is the place of price \(Price\), and only inputs/],
  ["bid_date=31.02.2026", "job-invalid", /bid_date is "2026-02-31", but there is no such day/],
  ["bid_date=3/14/2026", "job-invalid", /must be a date like 2026-05-31/],
  [
    "soil=mud",
    "job-invalid",
    /^job-invalid: Nothing was set, and \S+ stays as it is:\n {2}- soil is "mud", but must be one of/,
  ],
  ["items.unit_price[1]=2", "name-no-input", /from the office book/],
  ["runs.run=2", "assignment-unclear", /say which row, as in runs\.run\[1\]/],
  ["runs.run[6]=2", "name-unknown", /rows 1 to 5/],
  ["run.label[2]=x", "name-unknown", /Did you mean "runs\.label\[2\]"\?/],
  ["runs.cost[1]=2", "name-unknown", /Inputs of runs: runs\.label, runs\.run\./],
  ["runs.run[5]=2", "row-too-far", /3 rows so far, and the next is 4/],
  ["runs[2]=2", "assignment-unclear", /as in runs\.label\[2\]=value/],
  ["runs[9]=", "assignment-unclear", /a table of 5 rows/],
  ["height", "assignment-unclear", /not of the form name=value/],
  ["height=__proto__", "job-invalid", /- height/],
])("refuses %s and leaves the file as it is", async (assignment, code, sentence) => {
  const before = await readFile(file);
  const { status, err } = await set("wind=90", assignment);
  expect(status).toBe(2);
  expect(err).toMatch(new RegExp(`^${code}: `));
  expect(err).toMatch(sentence);
  expect(await readFile(file)).toEqual(before);
});

test.each([
  [["--by", " "], /by-missing/],
  [["--from", "hearsay"], /Allowed choices are measured on site/],
  [["--from", "changed in the workbook"], /Allowed choices/],
  [["--by", "x".repeat(101)], /by/],
])("refuses %j", async (args, sentence) => {
  const { status, err } = await set("height=6", ...args);
  expect(status).toBe(2);
  expect(err).toMatch(sentence);
});

test("a trail that was edited takes no more entries", async () => {
  await set("height=6");
  const job = await read();
  const trail = job.trail?.map((one) => ({ ...one, new: 7 }));
  await writeFile(file, JSON.stringify({ ...job, trail }));
  const { status, err } = await set("height=8");
  expect(status).toBe(2);
  expect(err).toMatch(/^trail-broken: .*Entry 1 of the trail \(height\)/);
});

test("an entry of another shape is told as any fault of the record", async () => {
  await writeFile(file, JSON.stringify({ ...fenceJob, trail: [{ by: 3 }] }));
  const { err } = await set("height=8");
  expect(err).toMatch(/trail\[1\]: "number" is missing/);
});
