import fc from "fast-check";
import { expect, test } from "vitest";
import type { OpenedJob } from "../../../engine/audit/open.js";
import type { OfficeBook } from "../../../engine/book/office-book.js";
import { valuesOf } from "../../../engine/book/values.js";
import { type ChangeOrder, changeOrderOf } from "../../../engine/compare/change-order.js";
import { compareJobs } from "../../../engine/compare/compare.js";
import { changeOrderMarkdown, heldBackSaid } from "../../../engine/compare/text.js";
import { comparisonWorkbook } from "../../../engine/compare/workbook.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { JobRecord } from "../../../engine/job/record.js";
import {
  calc,
  count,
  input,
  lines,
  money,
  sheet,
  table,
  template,
  text,
} from "../../../engine/template/index.js";
import { modelOf } from "../../../engine/template/models.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { fence, fenceBook, fenceJob } from "../../support/fence.js";

const said = [
  'IF(strong_enough,"","DRAFT: the fence is too weak.")',
  '"■ What we build"',
  '"•  A fence "&FIXED(height,2)&" ft high."',
  'IF(gate,"•  With a gate.","")',
  '"The work takes "&FIXED(work_days,0)&" days."',
  'IF(LEN(promise)>0,"Promise: "&promise,"")',
  '"The price is "&FIXED(price,2)&"."',
];

/** The invented fence with a page that a customer agrees to. */
const agreed = template({
  ...fence,
  sheets: [
    ...fence.sheets,
    sheet("Agreement", "For the customer.", [
      lines("Terms", {
        promise: input(text, "Promise", { optional: true }),
        crew: input(count, "People in the crew", { default: 2, least: 1, whole: true }),
        work_days: calc(count, "ROUNDUP(ROUND(total_posts/crew/5,6),0)", "Days"),
        in_all: calc(money, "price+crew*10[$]", "In all"),
      }),
      table(
        "page",
        "Lines",
        { rows: said.length },
        {
          says: calc(text, (row) => said[row - 1] as string, "Line", { reader: "customer" }),
        },
      ),
      table(
        "payments",
        "Payments",
        { rows: 2, data: [{ due: "first" }, { due: "last" }] },
        {
          due: input(text, "Due"),
          amount: calc(money, "in_all/2", "Amount"),
          heading: calc(text, 'due&" payment"', "Heading"),
        },
      ),
    ]),
  ],
  roles: {
    price: "price",
    cost: "materials",
    customer: "customer",
    sections: [],
    told: ["height"],
    office: ["margin", "crew", "paint"],
    agreed: {
      name: "agreement",
      lines: "page.says",
      draftMark: "DRAFT",
      marks: ["•", "■"],
      sum: "in_all",
      days: "work_days",
      draws: { name: "payments.due", amount: "payments.amount" },
    },
  },
});
const model = modelOf(agreed, "us");

function opened(inputs: JobRecord["inputs"], book: OfficeBook = fenceBook): OpenedJob {
  const job = { ...fenceJob, inputs: { ...fenceJob.inputs, ...inputs } };
  const values = calculate(model, valuesOf(model, job, book));
  return { files: [], source: "record", job: job.job, model, values, trail: [], book: book.name };
}

const order = (to: JobRecord["inputs"], terms = {}, book = fenceBook): ChangeOrder =>
  changeOrderOf(compareJobs(opened({}), opened(to, book)), terms);

test("every line that changed, came or went is listed, and what is said of the rest is true", () => {
  const { lines: found, words, rest } = order({ height: 6, gate: true, promise: "it stands" });
  expect(words).toEqual(["Height: 6.00 ft instead of 5.50 ft."]);
  expect(found).toEqual([
    { was: "A fence 5.50 ft high.", now: "A fence 6.00 ft high." },
    { was: "", now: "With a gate." },
    { was: "", now: "Promise: it stands" },
    expect.objectContaining({ now: expect.stringMatching(/^The price is/) }),
  ]);
  expect(rest).toBe(
    "Every line of the agreement that changes is listed here; the others stay as agreed.",
  );
});

test("a promise alone, which moves no money, is a change too", () => {
  const back = changeOrderOf(
    compareJobs(opened({ promise: "one year" }), opened({ promise: "two" })),
  );
  expect(back.lines).toEqual([{ was: "Promise: one year", now: "Promise: two" }]);
  expect(back.sum).toMatch(/^The price stays/);
  expect(changeOrderMarkdown(back)).not.toMatch(/Nothing/);
});

test("nothing changed is said of the page, not of the world", () => {
  expect(order({})).toMatchObject({ lines: [], rest: "No line of the agreement changes." });
});

test("property: the lines listed are just those by which the two pages differ", () => {
  const job = fc.record({
    height: fc.integer({ min: 1, max: 12 }),
    gate: fc.boolean(),
    promise: fc.constantFrom("", "one", "two"),
  });
  const pageOf = ({ values }: OpenedJob) =>
    model.tables
      .get("page")
      ?.columns.get("says")
      ?.cells.slice(1)
      .map(({ index }) => String(values[index]));
  const plain = (line = "") => line.replace(/^[•■]\s+/, "");
  fc.assert(
    fc.property(job, job, (one, other) => {
      const [a, b] = [opened(one), opened(other)];
      const [before = [], after = []] = [pageOf(a), pageOf(b)];
      const differing = before.flatMap((was, i) =>
        was === after[i] ? [] : [{ was: plain(was), now: plain(after[i]) }],
      );
      expect(changeOrderOf(compareJobs(a, b)).lines).toEqual(differing);
    }),
    { numRuns: 25 },
  );
});

test("the head, the days and the draws", () => {
  const { head, terms, price } = order(
    { height: 6 },
    { number: "3", date: "2027-05-31", reason: "higher" },
  );
  expect(Object.fromEntries(head)).toEqual({
    "Change order no.": "3",
    ...{
      Date: "May 31, 2027",
      Customer: "Customer One",
      Site: "",
      Contractor: "",
      Reason: "higher",
    },
  });
  expect(terms.map(({ label }) => label)).toEqual(["Working days", "Draw: first", "Draw: last"]);
  const [, first, last] = terms;
  expect((first?.new as number) + (last?.new as number)).toBeCloseTo(price?.new as number, 2);
});

test("a page that is no more than a draft makes a draft of the order", () => {
  const weak = order({ height: 12, wind: 200 });
  expect(weak.draft).toBe("DRAFT: the fence is too weak.");
  expect(JSON.stringify(weak.lines)).not.toContain("DRAFT");
  expect(changeOrderMarkdown(weak)).toMatch(/^\*\*DRAFT: the fence is too weak\.\*\*/);
  expect(order({ height: 6 }).draft).toBeUndefined();
});

/** Each: what the office changed for itself, and how it is told. */
const own: [string, JobRecord["inputs"], RegExp][] = [
  ["the margin", { margin: 0.3 }, /Margin on price \(margin\) 20\.0% to 30\.0%/],
  ["the crew", { crew: 4 }, /People in the crew \(crew\) 2 to 4/],
  [
    "a table",
    { paint: [{ coats: 4 }, { coats: 3 }, { coats: 2 }] },
    /Coats \(paint\.coats\[1\]\) 2 to 4/,
  ],
];

test.each(own)(
  "%s is held back: neither sum nor lines go by it, and the office is told",
  (_, inputs, told) => {
    const [alone, both] = [order({ height: 6 }), order({ height: 6, ...inputs })];
    expect(both.price).toEqual(alone.price);
    expect(both.lines).toEqual(alone.lines);
    expect(both.terms).toEqual(alone.terms);
    expect(heldBackSaid(both).replaceAll("\\", "")).toMatch(told);
    expect(heldBackSaid(both)).toMatch(/move the sum by [-+]\$\d.*give --office-changes/);
    expect(changeOrderMarkdown(both)).toBe(changeOrderMarkdown(alone));
  },
);

test("prices of the book are held back like that", () => {
  const items = (fenceBook.tables.items ?? []).map((row) => ({ ...row, unit_price: 99 }));
  const dearer = order({ height: 6 }, {}, { ...fenceBook, tables: { items } });
  expect(dearer.price).toEqual(order({ height: 6 }).price);
  expect(heldBackSaid(dearer)).toMatch(/3 figures of the office book/);
});

test("with the office's word they are in the sum, and the customer is told that much", () => {
  const both = order({ height: 6, margin: 0.3 }, { withOffice: true });
  expect(both.heldBack).toBeUndefined();
  expect(both.price?.new).toBeGreaterThan(order({ height: 6 }).price?.new as number);
  const text = changeOrderMarkdown(both);
  expect(text).toMatch(/Of this, \+\$[\d,.]+ comes from the contractor's own figures/);
  expect(text).not.toMatch(/margin/i);
});

test("a change of the office's own that moves nothing needs no word", () => {
  expect(order({ paint: [{ coats: 2 }, { coats: 3 }, { coats: 2 }] }).heldBack).toBeUndefined();
});

test("on paper and as a workbook: all of it, with both signatures", async () => {
  const found = order({ height: 6, gate: true, crew: 3 }, { number: "3" });
  const comparison = compareJobs(opened({}), opened({ height: 6, gate: true, crew: 3 }));
  const read = readWorkbook(await comparisonWorkbook(comparison, "customer", found));
  const cells = [...(read.sheets[0]?.cells.values() ?? [])].map(({ value }) => String(value));
  for (const all of [cells.join("\n"), changeOrderMarkdown(found)]) {
    for (const part of [
      "Customer One",
      "Was: A fence 5.50 ft high.",
      "New: With a gate.",
      "Working days",
      "Draw: last",
      // the box of the sum is not empty
      found.sum,
    ]) {
      expect(all).toContain(part);
    }
    expect(all).toMatch(/Customer:? _+/);
    expect(all).toMatch(/Contractor:? _+/);
    expect(all).not.toMatch(/crew|margin|All else/i);
  }
});
