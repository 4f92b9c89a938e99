import exceljs from "exceljs";
import { expect, test } from "vitest";
import { auditWorkbook } from "../../../../engine/audit/audit.js";
import { calculate } from "../../../../engine/evaluate/calculate.js";
import { compile } from "../../../../engine/template/compile.js";
import * as t from "../../../../engine/template/index.js";
import type { Cell, Model } from "../../../../engine/template/model.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../../engine/workbook/write/write.js";
import { asking, askingIdentity, askingValues } from "../../../support/asking.js";
import { faultsOf, tiny } from "../../../support/tiny.js";
import { toyIdentity } from "../../../support/toy.js";

const goods = t.table(
  "goods",
  "Goods",
  { rows: 4, shown: "wanted>0" },
  {
    name: t.calc(t.text, (row) => `"${["sand", "wood", "nails", "glue"][row - 1]}"`, "Name"),
    wanted: t.calc(
      t.number,
      (row) => `given*${[1, 0, 2, 0][row - 1]}+more*${[0, 0, 0, 1][row - 1]}`,
      "Wanted",
    ),
    weight: t.calc(t.number, "wanted+5", "Weight"),
  },
);
const steps = t.table(
  "steps",
  "Steps",
  { rows: 2, working: true },
  { at: t.calc(t.number, (row) => `${row}`, "At"), twice: t.calc(t.number, "at*2", "Twice") },
);
const given = t.lines("Given", {
  given: t.input(t.number, "Given", { default: 1 }),
  more: t.input(t.number, "More", { default: 0 }),
});
const template = tiny([given, goods, steps]);
const model = compile(template, "us");

async function opened(of: Model, more: number) {
  const start = of.cells.map(({ id, fixed }) => ({ given: 1, more })[id] ?? fixed ?? null);
  const bytes = await writeWorkbook(of, calculate(of, start), {
    ...toyIdentity,
    template: "tiny",
    version: 1,
  });
  const book = new exceljs.Workbook();
  await book.xlsx.load(bytes as never);
  return { bytes, page: book.getWorksheet("Page") as exceljs.Worksheet };
}

const hiddenIn = (page: exceljs.Worksheet, of: Model, column: string): boolean[] =>
  (of.tables.get("goods")?.columns.get(column)?.cells ?? []).map(
    ({ line }) => page.getRow(line).hidden,
  );

test("rows that are not worth a look are hidden as the bid is written, and show again where they are", async () => {
  expect(hiddenIn((await opened(model, 0)).page, model, "name")).toEqual([
    false,
    true,
    false,
    true,
  ]);
  expect(hiddenIn((await opened(model, 3)).page, model, "name")).toEqual([
    false,
    true,
    false,
    false,
  ]);
});

test("under the title a formula tells when a hidden row comes into use", async () => {
  const { page } = await opened(model, 0);
  const cell = page.getCell(3, 5);
  expect(cell.formula).toBe(
    'IFERROR(IF(OR(ROUND(SUM(B11:B14)-SUBTOTAL(109,B11:B14),6)<>0),"A row in use is hidden: select all rows, right-click, Unhide",""),"")',
  );
  expect(cell.result ?? "").toBe("");
});

test("a table that nobody reads stands among the workings, under the name of its sheet", () => {
  const placed = model.placed.find(({ block }) => block.heading === "Page: Steps");
  expect(placed?.sheet).toBe("Workings");
  expect(model.tables.get("steps")?.home).toBe("Workings");
});

test("rows in which a person types stay in sight; beside results one is left", async () => {
  const ask = compile(asking, "us");
  const values = calculate(ask, askingValues(ask));
  const book = new exceljs.Workbook();
  await book.xlsx.load((await writeWorkbook(ask, values, askingIdentity)) as never);
  const lines = (id: string) =>
    (ask.tables.get("boards")?.columns.get(id)?.cells ?? []).map(
      ({ sheet, line }) => book.getWorksheet(sheet)?.getRow(line).hidden,
    );
  expect(lines("long")).toEqual([false, false, false]);
  expect(lines("surface")).toEqual([false, false, false]);
});

test("a workbook with hidden rows is as its template makes it", async () => {
  const { bytes } = await opened(model, 0);
  const { findings } = await auditWorkbook(readWorkbook(bytes, { look: true }), [template]);
  const grave = findings.filter(
    ({ grade, code }) => grade !== "to know" && code !== "input-untold",
  );
  expect(grave).toEqual([]);
});

test("a row that an edit brought into use, hidden as it was written, is only to know; one that somebody hid is not", async () => {
  const book = new exceljs.Workbook();
  await book.xlsx.load((await opened(model, 0)).bytes as never);
  const page = book.getWorksheet("Page") as exceljs.Worksheet;
  const more = model.byId.get("more") as Cell;
  page.getRow(more.line).getCell(more.column).value = 3;
  const hidden = async () => {
    const bytes = new Uint8Array(await book.xlsx.writeBuffer());
    const { findings } = await auditWorkbook(readWorkbook(bytes, { look: true }), [template]);
    return findings
      .filter(({ code, where }) => code === "hidden" && where === "sheet Page")
      .map(({ grade, found }) => [grade, found.replace(/^rows? \d+ "(\w+).*" /, "$1 ")]);
  };
  const used = ["to know", "glue is hidden, as written, and in use since an edit"];
  expect(await hidden()).toEqual([used]);
  const nails = model.byId.get("goods.name[3]") as Cell;
  page.getRow(nails.line).hidden = true;
  expect(await hidden()).toEqual([["doubtful", "nails is hidden"], used]);
});

test("a condition that cannot be read does not load", () => {
  const wrong = { ...goods, shown: "wantd>0" };
  expect(faultsOf(tiny([given, wrong, steps])).join("\n")).toMatch(
    /Table goods, shown: the name "wantd" is not known/,
  );
});

test("a table without any row in use goes with its heading", async () => {
  const { page } = await opened(model, 0);
  const columns = { ...goods.columns, wanted: t.calc(t.number, "more+given*0", "Wanted") };
  const none = compile(tiny([given, { ...goods, columns }, steps]), "us");
  const sheet = (await opened(none, 0)).page;
  const top = none.placed.find(({ block }) => block.heading === "Goods")?.top as number;
  expect([0, 1, 2, 3].map((i) => sheet.getRow(top + i).hidden)).toEqual([true, true, true, true]);
  expect(page.getRow(top).hidden).toBe(false);
});

test("beside rows of another sheet those not in use are hidden, and told when they come into use", async () => {
  const ask = compile(asking, "us");
  const book = new exceljs.Workbook();
  const second = ask.byId.get("boards.long[2]")?.index;
  const start = askingValues(ask).map((value, index) => (index === second ? null : value));
  const values = calculate(ask, start);
  await book.xlsx.load((await writeWorkbook(ask, values, askingIdentity)) as never);
  const sheet = book.getWorksheet("Decisions");
  const band = ask.placed.find(
    (one) => one.sheet === "Decisions" && one.block.heading === "Shelves",
  );
  const first = (band?.band?.header ?? 0) + 2;
  expect([0, 1, 2].map((i) => sheet?.getRow(first + i).hidden)).toEqual([false, false, true]);
  expect(sheet?.getCell(3, 5).formula).toContain(
    `SUMPRODUCT((A${first}:A${first + 2}<>"")*(ROW(A${first}:A${first + 2})-${first - 1}>SUBTOTAL(103,A${first}:A${first + 2})))>0`,
  );
});
