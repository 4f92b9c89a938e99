import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { runProgram } from "./run-soffice.js";
import { editCells, insertRow, pdfToPng, recalculate, takeSteps, toPdf } from "./soffice.js";

let folder: string;
let book: string;

const WRONG = -999;

async function writeBook(path: string): Promise<void> {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet("Pump");
  const put = (address: string, name: string, value: ExcelJS.CellValue) => {
    sheet.getCell(address).value = value;
    workbook.definedNames.add(`'Pump'!$${address[0]}$${address.slice(1)}`, name);
  };
  put("B1", "lift", 7.5);
  put("B2", "main_loss", 2.25);
  // Numeric cached values are the ones LibreOffice trusts unless it is told not to.
  put("B3", "total_dynamic_head", { formula: "lift+main_loss", result: WRONG });
  put("B4", "customer", "first");
  for (const [i, drop] of [1, 2, 4].entries()) sheet.getCell(`D${i + 1}`).value = drop;
  workbook.definedNames.add("'Pump'!$D$1:$D$3", "falls.drop");
  put("B5", "drop_sum", { formula: "SUM(falls.drop)", result: WRONG });
  await sheet.protect("", {});
  await workbook.xlsx.writeFile(path);
}

async function cells(path: string, addresses: readonly string[]): Promise<unknown[]> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.readFile(path);
  const sheet = workbook.getWorksheet("Pump");
  return addresses.map((a) => {
    const cell = sheet?.getCell(a);
    return cell?.formula ? cell.result : cell?.value;
  });
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-canary-"));
  book = join(folder, "book.xlsx");
  await writeBook(book);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("wrong cached numbers come back mended", async () => {
  expect(await cells(book, ["B3", "B5"])).toEqual([WRONG, WRONG]);
  const second = join(folder, "second.xlsx");
  await writeBook(second);
  const out = join(folder, "out");
  const written = await recalculate([book, second], out);
  expect(written).toEqual([join(out, "book.xlsx"), join(out, "second.xlsx")]);
  for (const path of written) expect(await cells(path, ["B3", "B5"])).toEqual([9.75, 7]);
});

test("edited cells change what depends on them", async () => {
  const out = join(folder, "edited.xlsx");
  const text = 'a "quoted" <name> & =1+1,\nsecond line, 3 m²';
  const edits = [
    { name: "lift", value: -0.1 },
    { name: "falls.drop[3]", value: 1e-7 },
    { name: "customer", value: text },
  ];
  await editCells(book, edits, out);
  expect(await cells(out, ["B1", "B3", "D3", "B5"])).toEqual([-0.1, 2.15, 1e-7, 3.0000001]);
  expect(await cells(out, ["B4"])).toEqual([text]);
});

test("an inserted row moves cells, and names follow", async () => {
  const out = join(folder, "inserted.xlsx");
  await insertRow(book, "Pump", 2, out);
  expect(await cells(out, ["B1", "B3", "B4", "B6"])).toEqual([7.5, 2.25, 9.75, 7]);
  const both = join(folder, "both.xlsx");
  await takeSteps(
    book,
    [
      { kind: "insert-row", sheet: "Pump", row: 1 },
      { kind: "set", name: "main_loss", value: 1 },
    ],
    both,
  );
  expect(await cells(both, ["B3", "B4"])).toEqual([1, 8.5]);
});

test.each([
  ["nothing_here", "no defined name nothing_here"],
  ["falls.drop", "is a range: say which, as in falls.drop[1]"],
  ["falls.drop[4]", "has 3 cells, not 4"],
])("a wrong name is refused: %s", async (name, message) => {
  const edit = editCells(book, [{ name, value: 1 }], join(folder, "refused.xlsx"));
  await expect(edit).rejects.toThrow(message);
});

test("a file that is no workbook is reported, though LibreOffice exits with 0", async () => {
  const broken = join(folder, "broken.xlsx");
  await writeFile(broken, "PK\u0003\u0004 no zip");
  await expect(recalculate([broken], join(folder, "out"))).rejects.toThrow("did not write");
});

test("inputs that would hide a failure are refused", async () => {
  const absent = recalculate([join(folder, "absent.xlsx")], join(folder, "out"));
  await expect(absent).rejects.toThrow("does not exist");
  await expect(recalculate([book], folder)).rejects.toThrow("overwrite itself");
  await expect(recalculate([book, book], join(folder, "out"))).rejects.toThrow("written twice");
});

test("a program that is not installed is named with its package", async () => {
  const run = runProgram("rillbook-no-such-program", "libreoffice-calc", []);
  await expect(run).rejects.toThrow("install the Debian package libreoffice-calc");
});

test("a program that does not end is ended", async () => {
  await expect(runProgram("sleep", "coreutils", ["60"], 0.2)).rejects.toThrow("within 0.2 s");
});

test("a workbook prints, page by page", async () => {
  const [pdf] = await toPdf([book], join(folder, "print"));
  expect(await pdfToPng(pdf as string, join(folder, "print"))).toHaveLength(1);
});
