import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { natives } from "../../engine/formula/functions/index.js";
import { CellError, type ErrorCode, type Value } from "../../engine/formula/value.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { agree, shown } from "../engine/evaluate/agree.js";
import { caseFormula, caseLabel } from "../engine/evaluate/case-formula.js";
import { cases, type FunctionCase } from "../engine/evaluate/cases.js";
import { readableNumbers, recalculateInGnumeric } from "./gnumeric.js";
import { recalculate } from "./soffice.js";

/** No case expects it: what comes back as this was not recalculated. */
const planted = -999;

const programs = [
  // its distributions were off by up to 3e-14 of their size, all else by less than 1e-14
  { program: "LibreOffice", run: recalculate, part: 1e-13, instead: "office" },
  { program: "Gnumeric", run: recalculateInGnumeric, part: 1e-13, instead: "gnumeric" },
] as const;

let folder: string;
let rows: number[];

const fileFormula = (one: FunctionCase, row: number) => {
  const { formula, columns } = caseFormula(one, row);
  return { formula: `${natives.get(one.name)?.prefixed ? "_xlfn." : ""}${formula}`, columns };
};

const written = (value: Value): ExcelJS.CellValue =>
  value instanceof CellError ? { error: value.code as ExcelJS.CellErrorValue["error"] } : value;

/** All cases on one sheet, below one another; returns the row of each. */
async function writeCases(path: string): Promise<number[]> {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet("Cases");
  let next = 1;
  const found = cases.map((one) => {
    const row = next;
    const { formula, columns } = fileFormula(one, row);
    sheet.getCell(row, 1).value = { formula, result: planted };
    columns.forEach((column, i) => {
      column.forEach((value, j) => {
        if (value !== null) sheet.getCell(row + j, 3 + i).value = written(value);
      });
    });
    next += Math.max(1, ...columns.map((column) => column.length));
    return row;
  });
  await workbook.xlsx.writeFile(path);
  return found;
}

/** What the formula cells show, by row. */
async function resultsIn(path: string): Promise<Value[]> {
  const [sheet] = readWorkbook(readableNumbers(new Uint8Array(await readFile(path)))).sheets;
  return rows.map((row) => {
    const value = sheet?.cells.get(`A${row}`)?.value ?? "";
    return typeof value === "object" ? new CellError(value.error as ErrorCode) : value;
  });
}

beforeAll(async () => {
  // CHAR above 127 follows the encoding of the machine.
  vi.stubEnv("LC_ALL", "C.UTF-8");
  folder = await mkdtemp(join(tmpdir(), "rillbook-natives-"));
  rows = await writeCases(join(folder, "cases.xlsx"));
}, 120_000);
afterAll(() => {
  vi.unstubAllEnvs();
  return rm(folder, { recursive: true, force: true });
});

describe.each(programs)("$program", ({ program, run, part, instead }) => {
  let results: Value[];
  beforeAll(async () => {
    const [out = ""] = await run([join(folder, "cases.xlsx")], join(folder, program));
    results = await resultsIn(out);
  }, 120_000);

  test.each(cases.map((one, i) => [caseLabel(one), one, i] as const))("%s", (_, one, i) => {
    const expected = one[instead] ?? one.expected;
    const actual = results[i] as Value;
    expect(agree(actual, expected, part), `${shown(actual)}, not ${shown(expected)}`).toBe(true);
  });
});
