import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "../../../engine/cli/run.js";
import { fence } from "../../support/fence.js";
import { fenceModel, fenceWorkbook } from "../../support/fence-bid.js";
import { Tampered } from "../../support/tamper.js";

let folder: string;
let clean: string;
let forged: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-audit-"));
  clean = join(folder, "clean.xlsx");
  forged = join(folder, "forged.xlsx");
  const bytes = await fenceWorkbook();
  await writeFile(clean, bytes);
  const book = new Tampered(bytes, fenceModel).cell("price", () => "<v>3500</v>");
  await writeFile(forged, book.bytes());
});
afterAll(() => rm(folder, { recursive: true }));

async function rillbook(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  let out = "";
  let err = "";
  const voices = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
  };
  const status = await run(args, [fence], voices);
  return { status, out, err };
}

test("a clean workbook: status 0, and what its inputs stand on", async () => {
  const { status, out } = await rillbook("audit", clean);
  expect(status).toBe(0);
  expect(out).toContain("TO KNOW");
  expect(out.startsWith("CLEAN\n0 wrong, 0 doubtful, 2 to know.\n")).toBe(true);
});

test("what inputs stand on is one line, and a list of each in a report, with the way to say more", async () => {
  const { out } = await rillbook("audit", clean, "--report", join(folder, "stands.md"));
  expect(out).toMatch(/^TO KNOW {2}inputs: \d+ \S.*: all in --report audit\.md$/m);
  expect(out.match(/^TO KNOW {2}/gm)).toHaveLength(1);
  const report = await readFile(join(folder, "stands.md"), "utf8");
  expect(report).toContain(`rillbook take ${clean} -o ${join(folder, "clean.json")}, then`);
  expect(report).not.toMatch(/and \d+ more/);
});

test("a forged one: status 1, each finding with cell, found, expected and to do", async () => {
  const { status, out } = await rillbook("audit", forged);
  expect(status).toBe(1);
  expect(out).toContain("WRONG  Price!B23 (price)\n    found:    the fixed value $3,500.00");
  expect(out).toContain("    expected: $4,087.02, by =(materials+labor)/(1-margin)");
  expect(out).toContain("Price: the workbook shows $3,500.00; by the template it is $4,087.02.");
});

test("the same headings in the same order in the terminal and in a report", async () => {
  const mixed = new Tampered(await fenceWorkbook(), fenceModel);
  mixed.cell("price", () => "<v>3500</v>").cell("runs.run[1]", () => "<v>51.7</v>");
  const path = join(folder, "mixed.xlsx");
  await writeFile(path, mixed.bytes());
  const report = join(folder, "mixed.md");
  const { out } = await rillbook("audit", path, "--report", report);
  const titles = (text: string) =>
    text
      .split("\n")
      .flatMap((line) => /^(?:## )?((?:Wrong|Changed|Doubtful|To know)\b.*)/.exec(line)?.[1] ?? []);
  expect(titles(out).map((title) => title.replace(/:.*/, ""))).toEqual([
    "Wrong",
    "Changed inputs",
    "To know",
  ]);
  expect(titles(await readFile(report, "utf8"))).toEqual(titles(out));
});

test("of a changed input: what it was, what it moves of the price, and what to do", async () => {
  const book = new Tampered(await fenceWorkbook(), fenceModel);
  book.cell("runs.run[1]", () => "<v>51.7</v>");
  const path = join(folder, "shorter.xlsx");
  await writeFile(path, book.bytes());
  const { out } = await rillbook("audit", path);
  expect(out).toMatch(
    /51\.70 ft; when the workbook was written it was 61\.70 ft; with the value before it the price would be \$4,087\.02, with this one it is \$3,\d+\.\d\d/,
  );
  expect(out).toMatch(
    /Price: the workbook shows \$4,087\.02; by the template, from the inputs that stand in it now, it is \$3,\d+\.\d\d; with the changed input as before it would be \$4,087\.02\./,
  );
  expect(out).toMatch(/type 61\.7 into Runs![A-Z]+\d+ and save/);
});

test("as JSON", async () => {
  const { out } = await rillbook("audit", forged, "--json");
  const told = JSON.parse(out);
  expect(told.clean).toBe(false);
  expect(told.headline).toEqual([
    { name: "price", shown: 3500, byTemplate: expect.closeTo(4087.01555, 9), unit: "$" },
  ]);
  expect(told.findings[0]).toMatchObject({ grade: "wrong", code: "formula-overwritten" });
});

test("a report to file: text of the workbook cannot become markup in it", async () => {
  const odd = new Tampered(await fenceWorkbook(), fenceModel);
  odd.formula("offer", () => '"|&lt;b&gt;*x*`|"');
  const path = join(folder, "odd.xlsx");
  await writeFile(path, odd.bytes());
  const report = join(folder, "audit.md");
  expect((await rillbook("audit", path, "--report", report)).status).toBe(1);
  const text = await readFile(report, "utf8");
  expect(text).toContain("## Wrong:");
  expect(text).toContain('="\\|\\<b\\>\\*x\\*\\`\\|"');
  const row = text.split("\n").find((line) => line.includes("offer")) as string;
  expect(row.match(/(?<!\\)\|/g)).toHaveLength(5);
});

test.each([
  ["missing.xlsx", "workbook-file"],
  ["text.xlsx", "workbook-kind"],
])("what cannot be read: status 2 (%s)", async (name, code) => {
  await writeFile(join(folder, "text.xlsx"), "plain");
  const { status, err } = await rillbook("audit", join(folder, name));
  expect(status).toBe(2);
  expect(err).toContain(code);
});

test("a trace of a workbook tells the origins by its Trail sheet", async () => {
  const { status, out, err } = await rillbook("trace", clean, "runs.push[1]", "--depth", "3");
  expect([status, err]).toEqual([0, ""]);
  expect(out).toContain("= WIND_FORCE(339.35 [ft²],88 [ft/s])");
  expect(out).toContain("from: drawing, by Estimator A, 2026-05-04");
  expect(out).toContain("from: template default");
});

test("a trace says where the workbook shows something else than its inputs give", async () => {
  const { out, err } = await rillbook("trace", forged, "price", "--depth", "1");
  expect(out).toContain("price = $4,087.02   Price");
  expect(err).toContain("The workbook shows 3500 for price; its inputs give 4087.01555.");
});

test("a trace as JSON has the parts and exact values", async () => {
  const { out } = await rillbook("trace", clean, "PRICE", "--json");
  const node = JSON.parse(out);
  expect(node).toMatchObject({ name: "price", formula: "(materials+labor)/(1-margin)", unit: "$" });
  expect(node.parts[0].parts[0]).toMatchObject({ kind: "column", name: "takeoff.cost" });
});

test("a whole column is traced row by row", async () => {
  const { out } = await rillbook("trace", clean, "runs.face", "--depth", "1");
  expect(out).toContain("runs.face[3] = 66 ft²");
});

test.each([
  [["trace", "clean", "prize"], 'The name "prize" is not in template fence. Did you mean "price"?'],
  [["trace", "clean", "price", "--depth", "-1"], "whole number from 0 to 50"],
  [["trace", "nothing.json", "price"], "does not exist"],
])("%j is refused with a sentence", async (args, sentence) => {
  const { status, err } = await rillbook(...args.map((one) => (one === "clean" ? clean : one)));
  expect(status).toBe(2);
  expect(err).toContain(sentence);
});
