import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { run } from "../../../engine/cli/run.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { modelOf } from "../../../engine/template/models.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity, fenceJob } from "../../support/fence.js";
import { Tampered } from "../../support/tamper.js";
import { typedOver } from "../../support/typed-over.js";

const model = modelOf(fence, "us");
let bytes: Uint8Array;
let folder: string;

beforeAll(async () => {
  bytes = await writeWorkbook(model, calculate(model, fenceGiven(model)), fenceIdentity(model));
});
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-take-"));
  await writeFile(join(folder, "bid.xlsx"), bytes);
  await writeFile(join(folder, "old.json"), JSON.stringify(fenceJob));
});
afterEach(() => rm(folder, { recursive: true }));

async function take(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  let out = "";
  let err = "";
  const paths = args.map((arg) => (/\.(xlsx|json)$/.test(arg) ? join(folder, arg) : arg));
  const status = await run(["take", ...paths, "--by", "A"], [fence], {
    out: (text) => {
      out += text.replaceAll(folder, "");
    },
    err: (text) => {
      err += text.replaceAll(folder, "");
    },
  });
  return { status, out, err };
}
const json = async (name: string) => JSON.parse(await readFile(join(folder, name), "utf8"));

test("a new record beside the workbook, and where it is", async () => {
  expect(await take("bid.xlsx")).toEqual({
    status: 0,
    out: "Written: /bid.json (no input was changed)\n",
    err: "",
  });
  expect(await json("bid.json")).toMatchObject({ rillbook: 1, job: "F-1", trail: [] });
  expect((await readdir(folder)).sort()).toEqual(["bid.json", "bid.xlsx", "old.json"]);
});

test("an existing record takes changes in only when it is named", async () => {
  await take("bid.xlsx");
  const again = await take("bid.xlsx");
  expect([again.status, again.out]).toEqual([2, ""]);
  expect(again.err).toMatch(/^file-exists: \/bid\.json exists already/);
  expect((await take("bid.xlsx", "-o", "old.json")).status).toBe(0);
  expect(await json("old.json")).toEqual({ ...fenceJob, trail: [] });
});

test("changed figures: exit status 1, each named; the inputs are taken in", async () => {
  await writeFile(
    join(folder, "bid.xlsx"),
    typedOver(bytes, model, { height: 6, total_posts: 99 }),
  );
  const { status, out, err } = await take("bid.xlsx", "-o", "old.json");
  expect(status).toBe(1);
  expect(out).toMatch(
    /^height: 6 ft, was 5\.5 ft \(changed in the workbook, by A: the workbook does not say who saved it, nor when\)/,
  );
  expect(out).toMatch(/Written: \/old\.json \(1 change\)\n$/);
  expect(err).toMatch(
    /^not taken in: total_posts \(Runs!B\d+\): the fixed value 99 in place of a formula/m,
  );
  expect((await json("old.json")).inputs.height).toBe(6);
});

test("--json tells entries and findings", async () => {
  await writeFile(join(folder, "bid.xlsx"), typedOver(bytes, model, { height: 6 }));
  const { out } = await take("bid.xlsx", "-o", "old.json", "--json", "--note", "why");
  const { entries, findings, written } = JSON.parse(out);
  expect(entries[0]).toMatchObject({
    input: "height",
    new: 6,
    note: "why",
  });
  expect(findings[0]).toMatchObject({ code: "value-stale" });
  expect(written).toBe("/old.json");
});

test.each([
  [["none.xlsx"], /^workbook-file: .*There is no such file/],
  [["old.json"], /^workbook-kind: /],
  [["bid.xlsx", "--office", "book.xlsx"], /^options-missing: --office goes with --template/],
  [["bid.xlsx", "-o", "old.json", "--template", "fence"], /^file-exists: .*makes a new record/],
  [["bid.xlsx", "-o", "no/such/job.json"], /^folder-missing: The folder .* does not exist/],
])("refuses %j", async (args, sentence) => {
  const { status, err } = await take(...args);
  expect(status).toBe(2);
  expect(err).toMatch(sentence);
});

test("what else is wrong in the workbook points to the audit, once", async () => {
  const cut = new Tampered(bytes, model).change("xl/workbook.xml", (xml) =>
    xml.replace("<calcPr", '<calcPr fullPrecision="0"'),
  );
  await writeFile(join(folder, "bid.xlsx"), cut.bytes());
  const { status, out, err } = await take("bid.xlsx");
  expect(status).toBe(1);
  expect(out).toContain("no input was changed");
  expect(err).toMatch(
    /^not taken in: 1 more that the audit finds wrong \(the first: .*\)\. Run rillbook audit \S*bid\.xlsx\n$/,
  );
});

test("where the record will look for its office book and find none, it is told", async () => {
  const identity = { ...fenceIdentity(model), office: "prices/book.json" };
  const named = await writeWorkbook(model, calculate(model, fenceGiven(model)), identity);
  await writeFile(join(folder, "bid.xlsx"), named);
  const { status, err } = await take("bid.xlsx");
  expect(err).toBe(
    "The record names the office book prices/book.json, and there is none at /prices/book.json. Put the record where its book is, or give the book where it lies: rillbook bid /bid.json -o <new workbook> --office <file>.\n",
  );
  expect(status).toBe(0);
  await mkdir(join(folder, "prices"));
  await writeFile(join(folder, "prices", "book.json"), "{}");
  expect((await take("bid.xlsx", "-o", "again.json")).err).toBe("");
});

test("a refused workbook leaves the record as it is", async () => {
  await writeFile(join(folder, "bid.xlsx"), typedOver(bytes, model, { height: 60 }));
  const before = await readFile(join(folder, "old.json"));
  expect((await take("bid.xlsx", "-o", "old.json")).status).toBe(2);
  expect(await readFile(join(folder, "old.json"))).toEqual(before);
});

describe("taken in again", () => {
  const edited = (changes: Record<string, number | string>) =>
    writeFile(join(folder, "bid.xlsx"), typedOver(bytes, model, changes));
  const takeIn = () => take("bid.xlsx", "-o", "old.json");

  test("the same workbook: it says so, and the record stays as it is", async () => {
    await edited({ height: 6, soil: "sand" });
    expect((await takeIn()).out).toContain("Written: /old.json (2 changes)");
    const before = await readFile(join(folder, "old.json"));
    expect((await takeIn()).out).toBe(
      "Already taken in: its 2 changes stand in /old.json, which stays as it is.\n",
    );
    expect(await readFile(join(folder, "old.json"))).toEqual(before);
    expect(JSON.parse((await take("bid.xlsx", "-o", "old.json", "--json")).out)).toMatchObject({
      entries: [],
      takenBefore: 2,
    });
  });

  test("without a name, into the record beside it: it says so; a further change wants the name", async () => {
    await edited({ height: 6 });
    await take("bid.xlsx");
    expect((await take("bid.xlsx")).out).toBe(
      "Already taken in: its change stands in /bid.json, which stays as it is.\n",
    );
    await edited({ height: 6, soil: "sand" });
    expect((await take("bid.xlsx")).err).toMatch(/^file-exists: \/bid\.json exists already/);
    expect((await json("bid.json")).inputs.soil).toBe("clay");
  });

  test("with one more change: that one is taken in", async () => {
    await edited({ height: 6 });
    await takeIn();
    await edited({ height: 6, soil: "sand" });
    const { out } = await takeIn();
    expect(out).toMatch(/^soil: "?sand"?, was "?clay"?/);
    expect(out).toContain("Written: /old.json (1 change; 1 change taken in before)");
    expect(await json("old.json")).toMatchObject({
      inputs: { height: 6, soil: "sand" },
      trail: [{ input: "height" }, { input: "soil", old: "clay" }],
    });
  });

  test("after the record went on by itself: what was taken in is told, or that nothing was changed", async () => {
    const set = () =>
      run(["set", join(folder, "old.json"), "wind=90", "--by", "B", "--from", "drawing"], [fence], {
        out: () => undefined,
        err: () => undefined,
      });
    await set();
    expect(await takeIn()).toMatchObject({
      status: 0,
      out: expect.stringMatching(
        /^Nothing to take in: no input was changed in \/bid\.xlsx since it was written, and \/old\.json has gone on/,
      ),
    });
    await edited({ height: 6 });
    // the record's wind is none of the workbook's: a person has to say which counts
    expect((await takeIn()).err).toMatch(/^trails-part: /);
  });

  test("where both changed one input to two values, nothing is guessed", async () => {
    await edited({ height: 6 });
    await takeIn();
    await edited({ height: 7 });
    expect((await takeIn()).err).toMatch(/^trails-part: .*height/);
    expect((await json("old.json")).inputs.height).toBe(6);
  });
});

test.each(["new.xlsx", "bid2.xlsx"])(
  "into %s: the record's name is told, which then is taken",
  async (name) => {
    await writeFile(join(folder, "bid2.xlsx"), bytes);
    const record = name.replace("xlsx", "json");
    expect(await take("bid.xlsx", "-o", name)).toEqual({
      status: 2,
      out: "",
      err: `output-kind: /${name} would be the job record that the changes go into, whose name must end in .json. Give -o /${record}; a new one is made where there is none.\n`,
    });
    expect((await take("bid.xlsx", "-o", record)).status).toBe(0);
  },
);
