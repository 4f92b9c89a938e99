import { beforeAll, describe, expect, test } from "vitest";
import { RillbookError } from "../../../engine/errors.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { JobRecord } from "../../../engine/job/record.js";
import { appended } from "../../../engine/job/trail/chain.js";
import { verifyTrail } from "../../../engine/job/trail/verify.js";
import { takeWorkbook } from "../../../engine/take/take.js";
import { modelOf } from "../../../engine/template/models.js";
import { matchWorkbook } from "../../../engine/workbook/match/match.js";
import type {
  CellContent,
  CellValue,
  WorkbookContent,
} from "../../../engine/workbook/read/content.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity, fenceJob } from "../../support/fence.js";

const model = modelOf(fence, "us");
const time = "2026-03-04T05:06:07.089Z";
const taker = { by: "A. Estimator", note: "meeting", time };
const earlier = appended(
  [],
  [{ time, by: "B", input: "height", old: 4, new: 5.5, unit: "ft", from: "drawing" }],
);
const record: JobRecord = { ...fenceJob, trail: earlier };
const into = { record, file: "job.json" };
let content: WorkbookContent;

beforeAll(async () => {
  const values = calculate(model, fenceGiven(model));
  const identity = { ...fenceIdentity(model), trail: earlier, about: "invented", office: "p.xlsx" };
  content = readWorkbook(await writeWorkbook(model, values, identity));
});

type Edit = CellValue | CellContent;
const isContent = (edit: Edit): edit is CellContent =>
  typeof edit === "object" && edit !== null && "value" in edit;

/** The workbook with cells changed by id (or address on sheet Trail), and nothing recalculated. */
function edited(edits: Readonly<Record<string, Edit>>, from = content): WorkbookContent {
  const sheets = new Map(from.sheets.map((one) => [one.name, new Map(one.cells)]));
  const { at } = matchWorkbook(from, model);
  for (const [id, edit] of Object.entries(edits)) {
    const { sheet, address } = at.get(id) ?? { sheet: "Trail", address: id };
    sheets.get(sheet)?.set(address, isContent(edit) ? edit : { value: edit });
  }
  return {
    ...from,
    sheets: from.sheets.map((one) => ({ ...one, cells: sheets.get(one.name) ?? one.cells })),
  };
}

const take = (from: WorkbookContent, base?: typeof into) =>
  takeWorkbook(from, [fence], "bid.xlsx", taker, base);
const refusal = (from: WorkbookContent, base?: typeof into): string => {
  try {
    take(from, base);
    return "taken in";
  } catch (error) {
    if (!(error instanceof RillbookError)) throw error;
    return `${error.code}: ${error.message}`;
  }
};

test("an unchanged workbook gives back its record, word for word, and no entry", () => {
  const { job, entries, findings } = take(content, into);
  expect(job).toEqual(record);
  expect([entries, findings]).toEqual([[], []]);
});

test("without a record, a new one gives the same values, with trail, prices and words about it", () => {
  const { job } = take(content);
  expect(fenceGiven(model, job)).toEqual(fenceGiven(model));
  expect(job).toMatchObject({ job: "F-1", about: "invented", office: "p.xlsx", trail: earlier });
});

describe("changed inputs", () => {
  test.each<[string, Record<string, Edit>, object, [string, unknown, unknown][]]>([
    ["a number", { height: 6 }, { height: 6 }, [["height", 5.5, 6]]],
    ["a default", { margin: 0.3 }, { margin: 0.3 }, [["margin", 0.2, 0.3]]],
    [
      "a date",
      { bid_date: 46174 },
      { bid_date: "2026-06-01" },
      [["bid_date", "2026-05-04", "2026-06-01"]],
    ],
    ["a text", { customer: "Two" }, { customer: "Two" }, [["customer", "Customer One", "Two"]]],
    [
      "a text typed as a number",
      { customer: 12 },
      { customer: "12" },
      [["customer", "Customer One", "12"]],
    ],
    ["17 digits", { height: 5.300000000000001 }, { height: 5.3 }, [["height", 5.5, 5.3]]],
    [
      "a row added",
      { "runs.label[4]": "west", "runs.run[4]": 8 },
      { runs: [...(fenceJob.inputs.runs as object[]), { label: "west", run: 8 }] },
      [
        ["runs.label[4]", null, "west"],
        ["runs.run[4]", null, 8],
      ],
    ],
    [
      "a row added after a gap",
      { "runs.run[5]": 8 },
      { runs: [...(fenceJob.inputs.runs as object[]), null, { run: 8 }] },
      [["runs.run[5]", null, 8]],
    ],
    [
      "the last row cleared",
      { "runs.label[3]": null, "runs.run[3]": "" },
      { runs: (fenceJob.inputs.runs as object[]).slice(0, 2) },
      [
        ["runs.label[3]", "gate side", null],
        ["runs.run[3]", 12, null],
      ],
    ],
    [
      "a row among others cleared",
      { "runs.label[1]": null, "runs.run[1]": null },
      { runs: [null, ...(fenceJob.inputs.runs as object[]).slice(1)] },
      [
        ["runs.label[1]", "north", null],
        ["runs.run[1]", 61.7, null],
      ],
    ],
    [
      "a row that the template fills, cleared",
      { "takeoff.code[3]": null },
      { takeoff: [{}, {}, null] },
      [["takeoff.code[3]", "paint", null]],
    ],
  ])("%s", (_, edits, inputs, entries) => {
    const taken = take(edited(edits), into);
    expect(taken.job.inputs).toEqual({ ...record.inputs, ...inputs });
    expect(taken.entries.map((one) => [one.input, one.old, one.new])).toEqual(entries);
    expect(taken.job.trail).toEqual([...earlier, ...taken.entries]);
    expect(verifyTrail(taken.job.trail ?? [])).toEqual([]);
    expect(new Set(taken.entries.map(({ from }) => from))).toEqual(
      new Set(["changed in the workbook"]),
    );
  });

  test("the note says what the file claims of its last save, as a claim", () => {
    const properties = {
      ...content.properties,
      lastModifiedBy: "Some\nBody",
      modified: "2026-03-01T00:00:00Z",
    };
    const { entries } = take({ ...edited({ height: 6 }), properties });
    expect(entries[0]?.note).toBe(
      'meeting; the file says it was last saved by "Some Body", 2026-03-01T00:00:00Z',
    );
  });

  test.each([
    [{}, "meeting"],
    [{ lastModifiedBy: "rillbook", modified: "2000-01-01T00:00:00Z" }, "meeting"],
    [
      { lastModifiedBy: "rillbook", modified: "2026-03-01T00:00:00Z" },
      "meeting; the file says it was last saved 2026-03-01T00:00:00Z",
    ],
    [
      { lastModifiedBy: "Some Body", modified: "2000-01-01T00:00:00Z" },
      'meeting; the file says it was last saved by "Some Body"',
    ],
  ])("what a file says as it was written tells of no save: %j", (said, note) => {
    const { lastModifiedBy: _, modified: __, ...others } = content.properties;
    const { entries } = take({ ...edited({ height: 6 }), properties: { ...others, ...said } });
    expect(entries[0]?.note).toBe(note);
  });

  test("a formula typed into an input counts with its result, and the note tells it", () => {
    const { entries, job } = take(edited({ height: { value: 6, formula: "2*3" } }), into);
    expect(job.inputs.height).toBe(6);
    expect(entries[0]?.note).toContain("typed as =2*3");
  });
});

describe("what is not an input is told, and not taken in", () => {
  test.each<[string, Record<string, Edit>, string, string]>([
    ["a formula overwritten", { "runs.posts[1]": 9 }, "formula-overwritten", "runs.posts[1]"],
    [
      "a formula changed",
      { price: { value: 1, formula: "materials*3" } },
      "formula-edited",
      "price",
    ],
    ["a published figure", { "soils.spacing[3]": 12 }, "published-changed", "soils.spacing[3]"],
    ["a price", { "items.unit_price[1]": 12 }, "price-changed", "items.unit_price[1]"],
    ["a stale result", { height: 6 }, "value-stale", ""],
  ])("%s", (_, edits, code, name) => {
    const { findings, job } = take(edited(edits));
    const found = findings.find((one) => one.code === code);
    expect(found).toBeDefined();
    if (name !== "") expect(found?.name).toBe(name);
    expect(fenceGiven(model, job).length).toBe(model.cells.length);
  });
});

describe("refused", () => {
  test.each<[string, Record<string, Edit>, RegExp]>([
    [
      "an error",
      { height: { value: { error: "#REF!" }, formula: "#REF!*2" } },
      /height \(Height, Site!B\d+\) shows #REF!/,
    ],
    ["text for a number", { height: "tall" }, /holds "tall", but must be a number, not text/],
    ["a number as text", { height: "6" }, /holds "6", but must be a number/],
    ["yes for a number", { height: true }, /holds true, but must be a number/],
    ["text for a date", { bid_date: "2026-05-04" }, /must be a date, not text/],
    ["a time of day", { bid_date: 46174.5 }, /must be a whole day/],
    ["a day before 1900", { bid_date: -5 }, /must be a whole day/],
    ["out of range", { height: 40 }, /inputs\.height is 40, but must be <= 12/],
    ["not one of the choices", { soil: "peat" }, /must be one of: sand, loam, clay/],
    [
      "a default cleared",
      { margin: null },
      /margin \(Margin on price\) is blank .* the template puts 0\.2/,
    ],
    ["a formula never calculated", { height: { value: null, formula: "2*3" } }, /without a result/],
  ])("%s", (_, edits, sentence) => {
    expect(refusal(edited(edits), into)).toMatch(sentence);
  });

  test("all faults at once", () => {
    const said = refusal(edited({ height: "tall", bid_date: "soon" }));
    expect(said.split("\n  - ")).toHaveLength(3);
  });

  const withProperties = (change: Record<string, string | undefined>): WorkbookContent => {
    const custom = new Map(content.properties.custom);
    for (const [key, value] of Object.entries(change)) {
      if (value === undefined) custom.delete(key);
      else custom.set(key, value);
    }
    return { ...content, properties: { ...content.properties, custom } };
  };
  test.each<[string, Record<string, string | undefined>, RegExp]>([
    ["no template named", { "rillbook template": undefined }, /^workbook-foreign: /],
    [
      "another template",
      { "rillbook template": "fance" },
      /^template-unknown: .*Did you mean "fence"\?/,
    ],
    [
      "another version",
      { "rillbook version": "2" },
      /^template-version: .*version 2 .* has version 3/,
    ],
    ["no version", { "rillbook version": "new" }, /^template-version: /],
    ["unknown units", { "rillbook units": "ells" }, /^units-unknown: /],
    ["no head", { "rillbook trail head": undefined }, /^trail-broken: /],
    [
      "another head",
      { "rillbook trail head": "a".repeat(64) },
      /^trail-broken: .*cut off or replaced/,
    ],
    [
      "another mark",
      { "rillbook inputs mark": "a".repeat(64) },
      /list of inputs as written was changed/,
    ],
  ])("%s", (_, change, sentence) => {
    expect(refusal(withProperties(change))).toMatch(sentence);
  });

  test("dates from 1904", () => {
    expect(refusal({ ...content, date1904: true })).toMatch(/^workbook-dates: /);
  });

  test("a name of an input gone, pointed elsewhere, or doubled on its sheet", async () => {
    const names = (change: (name: string) => WorkbookContent["names"][number][] | undefined) => ({
      ...content,
      names: content.names.flatMap((one) => change(one.name) ?? [one]),
    });
    const named = (name: string) =>
      content.names.find((one) => one.name === name) as WorkbookContent["names"][number];
    const gone = names((name) => (name === "height" ? [] : undefined));
    expect(refusal(gone)).toMatch(/height: its name was deleted/);
    const apart = names((name) =>
      name === "height" ? [{ ...named("height"), target: named("wind").target }] : undefined,
    );
    expect(refusal(apart)).toMatch(/height: its name stands for Site!B\d+, away from/);
    const own = { ...content, names: [...content.names, { ...named("height"), scope: "Runs" }] };
    expect(refusal(own)).toMatch(/height: sheet Runs has a name of the same spelling/);
  });

  test("a sheet Trail that was changed or is gone", async () => {
    const trail = content.sheets.find(({ name }) => name === "Trail")?.cells;
    const [entry] =
      [...(trail ?? [])].findLast(([at, { value }]) => at[0] === "B" && value === "height") ?? [];
    const [listed] =
      [...(trail ?? [])].find(([at, { value }]) => at[0] === "B" && value === "height") ?? [];
    const line = (at: string | undefined) => at?.slice(1);
    expect(refusal(edited({ [`C${line(entry)}`]: 6 }))).toMatch(/Entry 1 .* does not fit its hash/);
    const both = edited({ [`C${line(listed)}`]: 6, height: 6 });
    expect(refusal(both)).toMatch(/list of inputs as written was changed/);
    const without = { ...content, sheets: content.sheets.filter(({ name }) => name !== "Trail") };
    expect(refusal(without)).toMatch(/sheet Trail is missing/);
  });

  test("a record of another job, or one that went its own way", async () => {
    const changed = (change: Partial<JobRecord>) => ({ ...into, record: { ...record, ...change } });
    expect(refusal(content, changed({ job: "F-2" }))).toMatch(/^other-job: .*job "F-2", .* "F-1"/);
    const longer = appended(earlier, [
      { time, by: "C", input: "wind", old: 88, new: 90, unit: "ft/s", from: "drawing" },
    ]);
    expect(refusal(content, changed({ trail: longer }))).toMatch(
      /^trails-part: .*entry 2 \(wind\)/,
    );
    const inputs = { ...record.inputs, wind: 95 };
    expect(refusal(content, changed({ inputs }))).toMatch(
      /^record-changed: wind is 95 in job\.json, but was 88/,
    );
  });

  test("but an older state of the record takes the workbook's trail over", async () => {
    const older = { ...record, trail: [], inputs: { ...record.inputs, height: 4 } };
    const { job, entries } = take(content, { ...into, record: older });
    expect(job.trail).toEqual(earlier);
    expect(job.inputs.height).toBe(5.5);
    expect(entries).toEqual([]);
  });
});
