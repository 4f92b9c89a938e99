import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { natives } from "../../engine/formula/natives.js";
import { CellError, type ErrorCode, type Value } from "../../engine/formula/value.js";
import { agree, shown } from "../engine/evaluate/agree.js";
import { caseFormula, caseLabel } from "../engine/evaluate/case-formula.js";
import { cases, type FunctionCase } from "../engine/evaluate/cases.js";
import { recalculate } from "./soffice.js";

/** No case expects it: what comes back as this was not recalculated. */
const planted = -999;

/** LibreOffice formats what DATE gives as a date, and exceljs reads that as one. */
const dayLength = 86_400_000;
const dayZero = 25_569;

/** LibreOffice's distributions were off by up to 3e-14 of their size, all else by less than 1e-14. */
const part = 1e-13;

let folder: string;
let results: Value[];

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
  const rows = cases.map((one) => {
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
  return rows;
}

/** What a formula cell shows; an empty text comes back as nothing. */
function resultOf(cell: ExcelJS.Cell): Value {
  const result = cell.result as unknown;
  if (result instanceof Date) return result.getTime() / dayLength + dayZero;
  if (typeof result === "object" && result !== null && "error" in result) {
    return new CellError(result.error as ErrorCode);
  }
  return (result ?? "") as Value;
}

beforeAll(async () => {
  // CHAR above 127 follows the encoding of the machine.
  vi.stubEnv("LC_ALL", "C.UTF-8");
  folder = await mkdtemp(join(tmpdir(), "rillbook-natives-"));
  const rows = await writeCases(join(folder, "cases.xlsx"));
  const [out] = await recalculate([join(folder, "cases.xlsx")], join(folder, "out"));
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.readFile(out as string);
  const sheet = workbook.getWorksheet("Cases") as ExcelJS.Worksheet;
  results = rows.map((row) => resultOf(sheet.getCell(row, 1)));
}, 120_000);
afterAll(() => {
  vi.unstubAllEnvs();
  return rm(folder, { recursive: true, force: true });
});

test.each(cases.map((one, i) => [caseLabel(one), one, i] as const))("%s", (_, one, i) => {
  const expected = one.office ?? one.expected;
  const actual = results[i] as Value;
  expect(agree(actual, expected, part), `${shown(actual)}, not ${shown(expected)}`).toBe(true);
});
