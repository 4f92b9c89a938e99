import { expect, test } from "vitest";
import type { JobRecord } from "../../../engine/job/record.js";
import { inputValues } from "../../../engine/job/values.js";
import { JobValues } from "../../../engine/job/values-again.js";
import type { OfficeValues } from "../../../engine/template/book-layout.js";
import * as t from "../../../engine/template/index.js";
import { modelOf } from "../../../engine/template/models.js";
import { rulesTables } from "../../../engine/template/office-layout.js";

/** What the office says of margin, rain and taxes; the taxes are rows of its own. */
const shed = t.template({
  name: "shed",
  version: 1,
  title: "Sheds",
  headline: ["price"],
  formulas: [],
  sheets: [
    t.sheet("Price", "Price.", [
      t.lines("Money", {
        margin: t.office(t.percent, "Margin", { default: 0.2, least: 0, most: 0.5 }),
        since: t.office(t.date, "Since", { optional: true }),
        days: t.input(t.count, "Days", { default: 10 }),
        sort: t.office(t.text, "Usual tax", { choices: "taxes.sort", optional: true }),
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
          dry: t.input(t.count, "Dry", { optional: true }),
        },
      ),
      t.table(
        "taxes",
        "Taxes",
        { rows: 4, filled: "LEN(sort)>0", data: [{ sort: "all", share: 0.1 }] },
        {
          sort: t.office(t.text, "Sort"),
          share: t.office(t.percent, "Share", { least: 0, most: 1 }),
          note: t.input(t.text, "Note", { default: "usual" }),
        },
      ),
      t.lines("Sum", {
        price: t.calc(t.money, "days*(1+margin)*1[$]*SUM(months.rain)*SUM(taxes.share)", "Price"),
        said: t.calc(
          t.text,
          'sort&FIXED(since,0)&FIXED(SUM(months.dry),0)&TEXTJOIN(" ",TRUE,taxes.sort,taxes.note)',
          "Said",
        ),
      }),
    ]),
  ],
});

const { rules } = rulesTables;
const taxes = (...rows: [string, number][]) => rows.map(([sort, share]) => ({ sort, share }));

const books: Record<string, OfficeValues> = {
  nothing: { tables: {} },
  "a rule": {
    tables: {
      [rules]: [
        { rule: "margin", value: 0.3 },
        { rule: "since", value: "2026-03-01" },
      ],
    },
  },
  "rows by name": {
    tables: { months: [{ name: "dry", rain: 4 }], [rules]: [{ rule: "margin", value: 0.1 }] },
  },
  "rows of its own": { tables: { taxes: taxes(["all", 0.2], ["city", 0.03], ["state", 0.05]) } },
  "another choice": {
    tables: { taxes: taxes(["city", 0.2]), [rules]: [{ rule: "sort", value: "city" }] },
  },
};

const jobs: Record<string, JobRecord["inputs"]> = {
  nothing: {},
  "its own margin and date": { margin: 0.25, since: "2026-05-04", days: 3 },
  "a blank": { since: "" },
  "rows of months": { months: [{ rain: 2 }, { dry: 5 }] },
  "one row of months": { months: [null, { rain: 2, dry: 1 }] },
  "rows of taxes": { taxes: [{ sort: "all", share: 0.4 }, { sort: "town" }, null, { note: "x" }] },
  "no rows of taxes": { taxes: [] },
};

const found = (get: () => unknown): unknown => {
  try {
    return get();
  } catch (error) {
    return String(error);
  }
};

test.each(Object.entries(jobs))(
  "a job with %s: under each book after each other, as anew",
  (_, inputs) => {
    const model = modelOf(shed, "us");
    const job = {
      rillbook: 1,
      job: "S-1",
      template: "shed",
      version: 1,
      units: "us",
      inputs,
    } as JobRecord;
    const anew = (office: OfficeValues) => found(() => inputValues(model, job, office));
    const all = Object.values(books);
    const seen = new Set<unknown>();
    for (const before of all) {
      const values = new JobValues(model, job, (office) => inputValues(model, job, office));
      const first = found(() => values.under(before));
      expect(first).toEqual(anew(before));
      // the list is the caller's: what becomes of it changes nothing here
      if (Array.isArray(first)) first.fill("changed");
      for (const office of all) {
        const now = found(() => values.under(office));
        expect(now).toEqual(anew(office));
        seen.add(JSON.stringify(now));
      }
    }
    expect(seen.size).toBeGreaterThan(1);
  },
);
