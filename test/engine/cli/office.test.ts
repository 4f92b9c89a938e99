import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "../../../engine/cli/run.js";
import { calc, check, lines, number, sheet, template } from "../../../engine/template/index.js";
import type { Template } from "../../../engine/template/template.js";
import { waterfall } from "../../../sheets/templates/waterfall.js";

const tiny = template({
  name: "waterfall",
  version: 1,
  title: "A template that reads prices",
  sheets: [
    sheet("One", "A sheet.", [
      lines("One", { one: calc(number, "1", "One"), is: check("one=1", "No.", { label: "One" }) }),
    ]),
  ],
  formulas: [],
  headline: [],
  office: waterfall.office ?? [],
});

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-office-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const rillbook = (...args: string[]) => rillbookOf(tiny, ...args);

async function rillbookOf(template: Template, ...args: string[]) {
  let [said, told] = ["", ""];
  const status = await run(args, [template], {
    out: (text) => {
      said += text;
    },
    err: (text) => {
      told += text;
    },
  });
  return { status, said, told };
}

const demo = "sheets/demo/office-book.json";

test("a new office book asks for what is to be filled in, and is left alone afterwards", async () => {
  const file = join(folder, "new.xlsx");
  const made = await rillbook("office", "--new", file);
  expect(made).toMatchObject({ status: 0, told: "" });
  expect(made.said).toContain(`Written: ${file}`);
  const checked = await rillbook("office", "check", file);
  expect(checked).toMatchObject({ status: 0, told: "" });
  expect(checked.said).toMatch(
    /119 rows are still placeholders\. .*\n {2}sheet Items: 83, the first in row 5 \(cell J5\), code "pot"\n/,
  );
  const again = await rillbook("office", "--new", file);
  expect(again).toMatchObject({ status: 2, said: "" });
  expect(again.told).toContain("file-exists");
});

test("contract terms without words are told by name, and a book that words them all has none", async () => {
  const file = join(folder, "terms.xlsx");
  expect((await rillbookOf(waterfall, "office", "--new", file)).status).toBe(0);
  const starter = await rillbookOf(waterfall, "office", "check", file);
  expect(starter.said).toMatch(
    /Blank on sheet Contract terms: Parties, .*Right to cancel, Liens, Disputes, Other terms\./,
  );
  const worded = await rillbookOf(waterfall, "office", "check", demo);
  expect(worded.said).not.toContain("Contract terms: Parties");
  expect(worded.said).toContain("Blank on sheet Contract terms: Other terms.");
});

test("a book written from another reads back as the same", async () => {
  const file = join(folder, "demo.xlsx");
  expect((await rillbook("office", "--new", file, "--from", demo)).status).toBe(0);
  const [first, second] = [
    await rillbook("office", demo, "--json"),
    await rillbook("office", file, "--json"),
  ];
  expect(first.status).toBe(0);
  const { file: _, ...left } = JSON.parse(first.said);
  const { file: __, ...right } = JSON.parse(second.said);
  expect(right).toEqual(left);
  expect(left.rows.rates).toBeGreaterThan(40);
});

test("a new book must be a workbook", async () => {
  const { status, told } = await rillbook("office", "--new", join(folder, "new.json"));
  expect(status).toBe(2);
  expect(told).toContain("must end in .xlsx");
});

test("the placeholders that a job uses are told first, each with its cell", async () => {
  const file = join(folder, "for.xlsx");
  const job = join(folder, "yard.json");
  expect((await rillbookOf(waterfall, "office", "--new", file)).status).toBe(0);
  expect((await rillbookOf(waterfall, "start", job)).status).toBe(0);
  const { said, told } = await rillbookOf(waterfall, "office", "check", file, "--for", job);
  expect(told).toBe("");
  expect(said).toMatch(
    /yard\.json uses \d+ placeholders; begin with these:\n( {2}sheet .*row \d+ \(cell [A-Z]+\d+\), code ".*"\n)+123 rows/,
  );
  const json = await rillbookOf(waterfall, "office", "check", file, "--for", job, "--json");
  expect(JSON.parse(json.said).usedByJob).toContainEqual({ from: "rates", code: "wage-laborer" });
});

test("check without a book asks for one", async () => {
  expect(await rillbook("office", "check")).toMatchObject({
    status: 2,
    told: expect.stringMatching(
      /^usage: Name the office book to check, as in rillbook office check/,
    ),
  });
});
