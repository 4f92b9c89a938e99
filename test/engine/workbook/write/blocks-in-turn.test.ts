import exceljs from "exceljs";
import { expect, test } from "vitest";
import { calculate } from "../../../../engine/evaluate/calculate.js";
import type { Value } from "../../../../engine/formula/value.js";
import { compile } from "../../../../engine/template/compile.js";
import * as t from "../../../../engine/template/index.js";
import { writeWorkbook } from "../../../../engine/workbook/write/write.js";
import { tiny } from "../../../support/tiny.js";
import { toyIdentity } from "../../../support/toy.js";

// What of a sheet is printed stands first, and the headings of its one long table stay in sight.

const notes = t.unprinted(
  t.lines("For the office", { half: t.calc(t.count, "SUM(beds.plants)/2", "Half") }),
);
const totals = t.lines("Totals", { all: t.calc(t.count, "SUM(beds.plants)", "All plants") });
const beds = (rows: number) =>
  t.table("beds", "Beds", { rows }, { plants: t.input(t.count, "Plants", { optional: true }) });

async function sheetOf(blocks: readonly t.Block[]) {
  const model = compile(tiny(blocks), "us");
  const values = calculate(model, Array<Value>(model.cells.length).fill(null));
  const back = new exceljs.Workbook();
  await back.xlsx.load((await writeWorkbook(model, values, toyIdentity)) as unknown as ArrayBuffer);
  const placed = (name: string) => model.placed.find(({ block }) => headingOf(block) === name);
  return { sheet: back.getWorksheet("Page"), placed };
}

const headingOf = (block: t.Block): string => ("heading" in block ? block.heading : "");

test("what is left out of print stands below all that is printed", async () => {
  const { sheet, placed } = await sheetOf([notes, beds(4), totals]);
  const end = Number(/\d+$/.exec(sheet?.pageSetup.printArea ?? "")?.[0]);
  expect(end).toBe(placed("Totals")?.bottom);
  expect(placed("For the office")?.top).toBeGreaterThan(end);
});

test.each([
  ["of a long table its headings", [beds(40), totals], "Beds"],
  ["of a short table the title alone", [beds(4), totals, notes], undefined],
  [
    "of a table far down the title alone",
    [t.paragraphs("Notes", ...Array(12).fill("Note.")), beds(60), totals],
    undefined,
  ],
])("in sight stays %s", async (_, blocks, heading) => {
  const { sheet, placed } = await sheetOf(blocks);
  const header = heading === undefined ? undefined : placed(heading)?.band?.header;
  expect(sheet?.views[0]).toMatchObject({
    state: "frozen",
    ySplit: header === undefined ? 2 : header + 1,
  });
});
