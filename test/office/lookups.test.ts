import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { addressOf } from "../../engine/address.js";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { calculate } from "../../engine/evaluate/calculate.js";
import { compile } from "../../engine/template/compile.js";
import * as t from "../../engine/template/index.js";
import type { Cell } from "../../engine/template/model.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { givenFor, lookupCases, modelOf } from "../engine/evaluate/formula-cases.js";
import { plantWrongValues } from "../support/plant.js";
import { tiny } from "../support/tiny.js";
import { toyIdentity } from "../support/toy.js";
import { compareWith } from "./differences.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { recalculate } from "./soffice.js";

const model = modelOf(
  Object.fromEntries(
    lookupCases.map(([text, quantity], i) => [`f_${i}`, t.calc(quantity, text, "")]),
  ),
);

/** A template with a single check, which fails. */
const oneCheck = compile(
  tiny([t.lines("", { too_much: t.check("1+1=3", "Too much.", { label: "Too much" }) })]),
  "us",
);

const identity = { ...toyIdentity, template: model.template.name, version: model.template.version };

let folder: string;
let file: string;
let bytes: Uint8Array;
let single: string;
let singleBytes: Uint8Array;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-lookups-"));
  file = join(folder, "lookups.xlsx");
  bytes = await writeWorkbook(model, calculate(model, givenFor(model)), identity);
  await writeFile(file, plantWrongValues(bytes).bytes);
  single = join(folder, "single.xlsx");
  const values = calculate(
    oneCheck,
    oneCheck.cells.map(({ fixed }) => fixed ?? null),
  );
  singleBytes = await writeWorkbook(oneCheck, values, identity);
  await writeFile(single, plantWrongValues(singleBytes).bytes);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test.each([
  ["LibreOffice", recalculate],
  ["Gnumeric", recalculateInGnumeric],
] as const)("%s finds what ours find, and keeps each error", async (program, run) => {
  const [stored = "", alone = ""] = await run([file, single], join(folder, program));
  const content = readWorkbook(new Uint8Array(await readFile(stored)));
  const { sheets } = content;
  const found = lookupCases.map(([text], i) => {
    const { sheet, column, line } = model.byId.get(`f_${i}`) as Cell;
    const cells = sheets.find(({ name }) => name === sheet)?.cells;
    return [text, shown(cells?.get(addressOf(column, line))?.value)];
  });
  // which error it is differs: an error in what MATCH looks for is #N/A in one program
  const wanted = lookupCases.map(([text, , value]) => [
    text,
    value instanceof RegExp ? "an error" : typeof value === "string" ? value : Number(value),
  ]);
  expect(found).toEqual(wanted);
  const { differences } = await compareWith(bytes, stored);
  expect(differences.filter((one) => !/ours #[^,]+, theirs #/.test(one))).toEqual([]);
  // the list of the only check is a table of one row as well
  expect((await compareWith(singleBytes, alone)).differences).toEqual([]);
  const { findings } = await auditWorkbook(content, [model.template]);
  expect(findings.filter(({ code }) => /^(formula|name)-/.test(code))).toEqual([]);
});

function shown(value: unknown): unknown {
  if (typeof value === "string") return value;
  return typeof value === "object" && value !== null ? "an error" : Number(value);
}
