import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { fence, fenceBook } from "../support/fence.js";
import { fenceModel, fenceWorkbook } from "../support/fence-bid.js";
import { Tampered } from "../support/tamper.js";
import { editCells, insertRow, recalculate } from "./soffice.js";

// What LibreOffice does to a workbook by storing it is no finding; what a person did in it is.

let folder: string;
let made: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-audit-"));
  made = join(folder, "made.xlsx");
  await writeFile(made, await fenceWorkbook());
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const auditOf = async (path: string) =>
  auditWorkbook(readWorkbook(new Uint8Array(await readFile(path))), [fence], { book: fenceBook });

test("a workbook that LibreOffice stored is clean", async () => {
  const [saved] = await recalculate([made], join(folder, "saved"));
  const audit = await auditOf(saved as string);
  expect(audit.findings.filter(({ grade }) => grade !== "to know")).toEqual([]);
  expect(audit.findings.map(({ code }) => code)).toEqual(["input-assumed", "input-assumed"]);
});

test.each([
  ["within a table", "Runs", 8],
  ["above all tables", "Site", 4],
])("an empty row inserted %s moves every address and is no fault", async (_, sheet, row) => {
  const out = join(folder, `row-${sheet}.xlsx`);
  await insertRow(made, sheet, row, out);
  const audit = await auditOf(out);
  expect(audit.findings.filter(({ grade }) => grade !== "to know")).toEqual([]);
});

test("an input typed over in LibreOffice is told, and nothing else", async () => {
  const out = join(folder, "edited.xlsx");
  await editCells(made, [{ name: "runs.run[2]", value: 40 }], out);
  const audit = await auditOf(out);
  const grave = audit.findings.filter(({ grade }) => grade !== "to know");
  expect(grave).toEqual([expect.objectContaining({ code: "input-untold", name: "runs.run[2]" })]);
});

test("a factor changed before LibreOffice recalculated and stored it is found by its formula alone", async () => {
  const book = new Tampered(await fenceWorkbook(), fenceModel);
  book.formula("labor", (formula) => formula.replace("75", "7.5"));
  const path = join(folder, "factor.xlsx");
  await writeFile(path, book.bytes());
  const [saved] = await recalculate([path], join(folder, "saved-factor"));
  const audit = await auditOf(saved as string);
  const grave = audit.findings.filter(({ grade }) => grade !== "to know");
  expect(grave).toEqual([expect.objectContaining({ code: "formula-edited", name: "labor" })]);
  expect(audit.headline[0]?.shown).toBeLessThan(audit.headline[0]?.byTemplate as number);
});
