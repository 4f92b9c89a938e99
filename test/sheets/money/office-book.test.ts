import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { checkBook } from "../../../engine/book/check.js";
import { readOfficeBook } from "../../../engine/book/read.js";
import { wholeOf } from "../../../sheets/parts/whole.js";
import { waterfall, waterfallParts } from "../../../sheets/templates/waterfall.js";

const layout = waterfall.office ?? [];
const { items, rates } = wholeOf(waterfallParts);
const demo = fileURLToPath(new URL("../../../sheets/demo/office-book.json", import.meta.url));

test("the demo office book is right, says that it is invented, and has every code that a bid asks for", async () => {
  const book = await readOfficeBook(demo, layout);
  expect(`${book.name} ${book.about}`).toContain("invented");
  const codes = (table: string) => book.tables[table]?.map(({ code }) => code) ?? [];
  expect(codes("items")).toEqual(expect.arrayContaining(items.map(({ code }) => code)));
  expect(codes("rates")).toEqual(expect.arrayContaining(rates.map(({ code }) => code)));
  for (const { supplier } of [...(book.tables.items ?? []), ...(book.tables.pumps ?? [])]) {
    expect(supplier).toMatch(/^Demo /);
  }
});

const pump = {
  code: "p",
  description: "pump",
  cost: 1,
  supplier: "a yard",
  quoted_on: "2026-10-01",
  good_until: "2026-12-01",
  minimum_water: 9,
  flow_1: 0,
  head_1: 20,
  flow_2: 1000,
  head_2: 15,
  flow_3: 2000,
  head_3: 5,
};

const check = (change: object) =>
  checkBook(
    {
      name: "x",
      asOf: "2026-10-01",
      about: null,
      tables: {
        items: { rows: [] },
        rates: { rows: [] },
        pumps: { rows: [{ at: 2, cells: { ...pump, ...change } }] },
      },
      where: ({ sheet }) => `sheet ${sheet}`,
    },
    layout,
    "prices.xlsx",
  );

test.each([
  [{}, undefined],
  [{ flow_4: 3000, head_4: 1, watts_4: 200 }, undefined],
  [{ flow_4: 3000 }, "point 4 of the curve lacks its flow or its head"],
  [{ flow_5: 3000, head_5: 1 }, "point 5 of the curve follows a blank one"],
  [{ flow_3: 1000 }, "flow_3 is 1000, but flow_2 is 1000: the flow must rise"],
  [{ head_3: 15 }, "head_3 is 15, but head_2 is 15: the head must fall"],
  [{ head_3: null }, "head_3 is blank, but is needed"],
])("a pump's curve with %j", (change, fault) => {
  if (fault === undefined) expect(() => check(change)).not.toThrow();
  else expect(() => check(change)).toThrow(fault);
});
