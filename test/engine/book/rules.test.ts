import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import exceljs from "exceljs";
import { afterAll, beforeAll, describe, expect, it, test } from "vitest";
import { fullBook } from "../../../engine/book/full-book.js";
import { checkedOfficeBook, readOfficeBook } from "../../../engine/book/read.js";
import { starterBook, starterRows } from "../../../engine/book/starter.js";
import { valuesOf } from "../../../engine/book/values.js";
import { writeOfficeBook } from "../../../engine/book/write.js";
import type { InputValues, JobRecord } from "../../../engine/job/record.js";
import * as t from "../../../engine/template/index.js";
import { modelOf } from "../../../engine/template/models.js";
import { layoutOf } from "../../../engine/template/office-layout.js";
import type { UnitSystem } from "../../../engine/units/quantity.js";

/** A tiny template: one rule of each kind, rows that the template names, rows of the office's own. */
const shed = t.template({
  name: "shed",
  version: 1,
  title: "Sheds",
  headline: ["total"],
  formulas: [],
  sheets: [
    t.sheet("Rules", "Rules.", [
      t.lines("Money", {
        margin: t.office(t.percent, "Margin", { default: 0.2, least: 0, most: 0.5 }),
        overhang: t.office(t.length, "Overhang", {
          default: 2,
          least: 0,
          most: 4,
          source: "habit",
        }),
        roof: t.office(t.text, "Roof", { default: "felt", choices: ["felt", "tile"] }),
        length: t.input(t.length, "Length", { default: 10 }),
      }),
      t.lines("Company", {
        company: t.office(t.text, "Company"),
        motto: t.office(t.text, "Motto", { optional: true }),
      }),
      t.table(
        "months",
        "Months",
        {
          rows: 2,
          data: [
            { name: "wet", rain: 9 },
            { name: "dry", rain: 1 },
          ],
        },
        {
          name: t.published(t.text, "Month", { source: "calendar" }),
          rain: t.office(t.count, "Rain", { least: 0, most: 31, whole: true }),
        },
      ),
      t.table(
        "taxes",
        "Taxes",
        { rows: 3, filled: "LEN(sort)>0", data: [{ sort: "all", share: 0.07 }] },
        {
          sort: t.office(t.text, "Kind"),
          share: t.office(t.percent, "Share", { least: 0, most: 1 }),
        },
      ),
      t.lines("Total", {
        total: t.calc(
          t.number,
          '(length+overhang)/1[ft]*(1+margin)+SUM(months.rain)+SUMPRODUCT((taxes.sort<>"")*taxes.share)+LEN(company)+LEN(motto)+IF(roof="tile",1,0)',
          "Total",
        ),
      }),
    ]),
  ],
});

const job = (inputs: InputValues = {}, units: UnitSystem = "us"): JobRecord => ({
  rillbook: 1,
  job: "S-1",
  template: "shed",
  version: 1,
  units,
  inputs: { company: "Own", ...inputs },
});

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-rules-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function bookOf(content: object) {
  const path = join(folder, "book.json");
  await writeFile(path, JSON.stringify({ name: "Office", asOf: "2026-01-01", ...content }));
  return readOfficeBook(path, layoutOf(shed));
}

/** Values by id, under a book. */
async function under(content: object, inputs: InputValues = {}, units: UnitSystem = "us") {
  const model = modelOf(shed, units);
  const values = valuesOf(model, job(inputs, units), await bookOf(content));
  return (id: string) => values[model.byId.get(id)?.index as number];
}

describe("a default", () => {
  const rules = [{ rule: "margin", value: 0.3 }];
  it("is the template's where the book has no rules, as in old price books", async () => {
    expect((await under({ tables: {} }))("margin")).toBe(0.2);
  });
  it("is the book's where it has the rule, and the job's where that says otherwise", async () => {
    expect((await under({ tables: { rules } }))("margin")).toBe(0.3);
    expect((await under({ tables: { rules } }, { margin: 0.1 }))("margin")).toBe(0.1);
  });
  it("is converted from the units of the book to those of the job", async () => {
    const long = { tables: { rules: [{ rule: "overhang", value: 1 }] } };
    expect((await under(long))("overhang")).toBe(1);
    expect((await under(long, {}, "si"))("overhang")).toBe(0.3048);
    expect((await under({ ...long, units: "si" }, {}, "si"))("overhang")).toBe(1);
  });
  it("of a row is found by the name of the row, whatever place it has", async () => {
    const at = await under({ tables: { months: [{ row: "dry", rain: 3 }] } });
    expect([at("months.rain[1]"), at("months.rain[2]")]).toEqual([9, 3]);
  });
  it("of rows of the office's own replaces the template's rows, and the job's replace both", async () => {
    const taxes = [
      { sort: "goods", share: 0.1 },
      { sort: "work", share: 0 },
    ];
    const at = await under({ tables: { taxes } });
    expect([at("taxes.sort[1]"), at("taxes.sort[2]"), at("taxes.sort[3]")]).toEqual([
      "goods",
      "work",
      null,
    ]);
    const own = await under({ tables: { taxes } }, { taxes: [{ sort: "none", share: 0 }] });
    expect([own("taxes.sort[1]"), own("taxes.sort[2]")]).toEqual(["none", null]);
  });
});

describe("a new book", () => {
  it.each(["us", "si"] as const)(
    "in %s has a place for every office input, and reads back as the starter",
    async (units) => {
      const layout = layoutOf(shed)(units);
      expect(layout.map(({ sheet }) => sheet)).toEqual(["Company", "Rules", "Months", "Taxes"]);
      const path = join(folder, `new-${units}.xlsx`);
      const tables = starterRows(layout);
      const { name, asOf } = starterBook(shed, units);
      await writeFile(path, await writeOfficeBook({ name, asOf, units, tables }, layout));
      const { book, placeholders } = await checkedOfficeBook(path, layoutOf(shed));
      expect(book.tables).toEqual(starterBook(shed, units).tables);
      const place = 'row 6 (cell E6), rule "company"';
      expect(placeholders).toEqual([
        { sheet: "Company", table: "company", rows: 1, first: place, each: [{ place }] },
      ]);
      const rules = book.tables.rules ?? [];
      expect(rules).toContainEqual({ rule: "overhang", value: units === "us" ? 2 : 0.6096 });
    },
  );

  it("from an older one keeps what that says, and puts the template's own beside it", async () => {
    const old = await bookOf({ tables: { rules: [{ rule: "margin", value: 0.3 }] } });
    const { tables } = fullBook(old, layoutOf(shed)("us"));
    expect(tables.rules).toMatchObject([
      { rule: "margin", value: 0.3, meaning: "Margin", unit: "%", range: "0% to 50%" },
      { rule: "overhang", value: 2, note: "Source: habit." },
      { rule: "roof", value: "felt", range: "felt, tile" },
    ]);
    expect(tables.months).toHaveLength(2);
  });
});

test.each([
  [
    "an unknown rule",
    [["margn", 0.2]],
    'sheet Rules, row 2, rule "margn": no template has a rule "margn". Did you mean "margin"? Correct its name, or take the row out.',
  ],
  [
    "a value past its range",
    [["margin", 0.6]],
    'sheet Rules, row 2, rule "margin": value (B2) is 60%, but must be at most 50%. Correct it.',
  ],
  [
    "a text for a number",
    [["margin", "20 %"]],
    'sheet Rules, row 2, rule "margin": value (B2) is "20 %", but must be a number. Type it without unit or sign of money.',
  ],
  [
    "none of the choices",
    [["roof", "slate"]],
    'sheet Rules, row 2, rule "roof": value (B2) is "slate", but must be one of: felt, tile.',
  ],
  [
    "a rule twice",
    [
      ["margin", 0.2],
      ["margin", 0.3],
    ],
    'sheet Rules, row 3, rule "margin": row 2 has the same rule, and upper and lower case count as one. Give each its own, or take one out.',
  ],
])("%s is named with sheet, row and cell", async (_, rows, fault) => {
  const workbook = new exceljs.Workbook();
  const about = workbook.addWorksheet("About");
  about.addRows([
    ["name", "Office"],
    ["as_of", "2026-01-01"],
  ]);
  workbook.addWorksheet("Rules").addRows([["Rule", "Value"], ...rows]);
  const path = join(folder, "wrong.xlsx");
  await workbook.xlsx.writeFile(path);
  await expect(readOfficeBook(path, layoutOf(shed))).rejects.toMatchObject({ faults: [fault] });
});
