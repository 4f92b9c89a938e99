import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOfficeBook } from "../../../engine/book/read.js";
import { valuesOf } from "../../../engine/book/values.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { InputValues, JobRecord } from "../../../engine/job/record.js";
import { Rerunner } from "../../../engine/rerun/rerun-one.js";
import { tradeOf } from "../../../engine/rerun/trade.js";
import * as t from "../../../engine/template/index.js";
import { modelOf } from "../../../engine/template/models.js";
import { layoutOf } from "../../../engine/template/office-layout.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";

/** Sheds again: what the office says of margin, wet months and taxes moves the price. */
const shed = t.template({
  name: "shed",
  version: 1,
  title: "Sheds",
  headline: ["price"],
  formulas: [],
  roles: { price: "price", cost: "cost", sections: [] },
  sheets: [
    t.sheet("Price", "Price.", [
      t.lines("Money", {
        margin: t.office(t.percent, "Margin", { default: 0.2, least: 0, most: 0.5 }),
        days: t.input(t.count, "Days", { default: 10 }),
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
          rain: t.office(t.count, "Rain", { least: 0, most: 31 }),
          lost: t.calc(t.count, "rain*days", "Lost"),
        },
      ),
      t.table(
        "taxes",
        "Taxes",
        { rows: 3, filled: "LEN(sort)>0", data: [{ sort: "all", share: 0.1 }] },
        {
          sort: t.office(t.text, "Sort"),
          share: t.office(t.percent, "Share", { least: 0, most: 1 }),
        },
      ),
      t.lines("Sum", {
        cost: t.calc(t.money, "(days+SUM(months.lost))*1[$]", "Cost"),
        price: t.calc(
          t.money,
          'cost*(1+margin)*(1+SUMPRODUCT((taxes.sort<>"")*taxes.share))',
          "Price",
        ),
        sound: t.check("price>0", "No price.", { label: "No price" }),
      }),
    ]),
  ],
});

const model = modelOf(shed, "us");
let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-rerun-rules-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function bookOf(name: string, tables: object) {
  const path = join(folder, `${name}.json`);
  await writeFile(path, JSON.stringify({ name, asOf: "2026-01-01", tables }));
  return { path, book: await readOfficeBook(path, layoutOf(shed)) };
}

const record = (office: string, inputs: InputValues): JobRecord => ({
  rillbook: 1,
  job: "S-1",
  template: "shed",
  version: 1,
  units: "us",
  office,
  inputs,
});

const old = { rules: [{ rule: "margin", value: 0.25 }] };
const next = {
  rules: [{ rule: "margin", value: 0.3 }],
  months: [{ row: "wet", rain: 10 }],
  taxes: [
    { sort: "goods", share: 0.1 },
    { sort: "work", share: 0.05 },
  ],
};

/** The price of a job under the next book, and what moved it; once from its record, once from its workbook. */
async function rerunOf(inputs: InputValues) {
  const { path, book: own } = await bookOf("old", old);
  const { book } = await bookOf("next", next);
  const job = record(path, inputs);
  const json = join(folder, "job-record.json");
  await writeFile(json, JSON.stringify(job));
  const xlsx = join(folder, "job.xlsx");
  const values = calculate(model, valuesOf(model, job, own));
  const { name, asOf, mark } = own;
  const identity = {
    job: "S-1",
    template: "shed",
    version: 1,
    units: "us",
    book: name,
    bookAsOf: asOf,
    bookMark: mark,
  } as const;
  await writeFile(xlsx, await writeWorkbook(model, values, identity));
  const asked = { book, versions: "own", day: 46000, filters: [], moved: true } as const;
  const rerunner = new Rerunner(tradeOf([shed]), asked);
  const lines = [];
  for (const file of [json, xlsx]) {
    const [done] = await rerunner.run([{ file, judged: true }]);
    if (done === undefined || !("line" in done) || done.line.line !== "job")
      throw new Error(JSON.stringify(done));
    lines.push(done.line);
  }
  return lines.map(({ before, now, moved }) => ({
    before: "price" in before ? before.price : before,
    now: now.price,
    moved: moved?.items.map(({ item }) => item).sort(),
  }));
}

test("a rerun takes the rules of the new book and says which of them moved the price", async () => {
  // cost: 10 days + (9 + 1) * 10; then + (10 + 1) * 10
  for (const { before, now, moved } of await rerunOf({})) {
    expect(before).toBeCloseTo(110 * 1.25 * 1.1, 9);
    expect(now).toBeCloseTo(120 * 1.3 * 1.15, 9);
    expect(moved).toEqual(["margin", "months.rain[1]", "taxes[2]"]);
  }
});

test("what the job overrides stays, in the record and in the workbook", async () => {
  const own = { margin: 0.1, months: [{}, { rain: 0 }], taxes: [{ sort: "none", share: 0 }] };
  for (const { before, now, moved } of await rerunOf(own)) {
    expect(before).toBeCloseTo(100 * 1.1, 9);
    expect(now).toBeCloseTo(110 * 1.1, 9);
    expect(moved).toEqual(["months.rain[1]"]);
  }
});
