import { expect, test } from "vitest";
import { CellError } from "../../../engine/formula/value.js";
import type { BookRow } from "../../../engine/template/book-layout.js";
import { book, items, moneyJob, smallJob } from "./money-job.js";

const changed = (code: string, change: BookRow) =>
  book(items.map((row) => (row.code === code ? { ...row, ...change } : row)));

test.each([
  [
    "an item that the book lacks",
    book(items.filter(({ code }) => code !== "foam")),
    'foam, a can for each 4 ft of lip or 12 ft² of face, code "foam": not in the office book. Correct sheet Items of the office book, or ask for a quote.',
  ],
  [
    "a quote that has ended",
    changed("foam", { good_until: "2026-11-24" }),
    'foam, a can for each 4 ft of lip or 12 ft² of face, code "foam": its price ended before the bid date. Correct sheet Items of the office book, or ask for a quote.',
    "Some prices end before this bid does, 30 days after Nov 25, 2026. Ask for longer quotes: see Good until on sheet Materials.",
    "Prices that end before work starts on Jun 1, 2027: 1. Ask for longer quotes, or add their rise to risks on sheet Decisions.",
  ],
  [
    "another unit",
    changed("pipe-2", { unit: "each" }),
    'pipe 2 in, code "pipe-2": sold by each, not by ft. Correct sheet Items of the office book, or ask for a quote.',
  ],
  [
    "a code on two rows",
    book([...items, { ...(items[0] as BookRow), cost: 0.01 }]),
    'Item liner-45mil, $1.10, tax class "taxable": code used twice, no cost, or class missing from taxes on sheet Office rules. Correct the office book.',
  ],
  [
    "a cost of nothing",
    changed("foam", { cost: 0 }),
    'Item foam, $0.00, tax class "taxable": code used twice, no cost, or class missing from taxes on sheet Office rules. Correct the office book.',
  ],
])("%s fails a check and says what to do", (_, prices, ...sentences) => {
  const job = moneyJob(smallJob, prices, true);
  expect(job.failed()).toEqual(sentences);
  expect(job.figure("checks_failed")).toBe(1);
});

test("an unknown tax class fails a check, and what it taxes has no price", () => {
  const job = moneyJob(smallJob, changed("foam", { tax_class: "half" }), true);
  expect(job.failed()).toContain(
    'Item foam, $17.00, tax class "half": code used twice, no cost, or class missing from taxes on sheet Office rules. Correct the office book.',
  );
  // not a tax of nothing: a figure that cannot be known is an error
  expect(String(job.value("price"))).toBe("#N/A");
});

test("a rate that the book lacks fails its check", () => {
  const whole = book();
  const rates = (whole.tables.rates ?? []).filter(({ code }) => code !== "dig");
  const job = moneyJob(smallJob, { ...whole, tables: { ...whole.tables, rates } });
  expect(job.failed()).toEqual([
    "Rate dig (Dig basin and stream, yd³/hour) is missing, zero, or in a unit that measures something else. Correct sheet Rates of the office book.",
  ]);
});

test("a code with a wildcard does not find another item", () => {
  const job = moneyJob({
    ...smallJob,
    additional_items: [{ description: "more foam", code: "fo*", needed: 1, unit: "each" }],
  });
  expect(job.failed()).toHaveLength(1);
  expect(job.failed()[0]).toContain('code "fo*": not in the office book');
  expect(job.figure("additional_items.cost[1]")).toBe(0);
});

test("a job without quantities has no error anywhere", () => {
  const bare = moneyJob({ bid_date: "2026-11-25" }, undefined, true);
  expect(bare.found.filter((value) => value instanceof CellError)).toEqual([]);
});

test("full tables have no error anywhere", () => {
  const extra = { description: "more", code: "foam", needed: 2, unit: "each" };
  const job = moneyJob(
    {
      ...smallJob,
      additional_items: Array.from({ length: 8 }, () => extra),
      options: Array.from({ length: 6 }, () => ({ ...extra, extra_hours: 3, taken: true })),
      draws: Array.from({ length: 6 }, () => ({ name: "part", share: 1 / 6 })),
      subcontracts: Array.from({ length: 6 }, () => ({
        by: "somebody",
        work: "electric work",
        amount: 10,
        quoted_until: "2027-06-30",
      })),
      risks: Array.from({ length: 6 }, () => ({ risk: "rock", low: 1, likely: 2, high: 9 })),
      additional_tasks: Array.from({ length: 6 }, () => ({ task: "planting", hours: 2 })),
    },
    undefined,
    true,
  );
  expect(job.found.filter((value) => value instanceof CellError)).toEqual([]);
  expect(job.failed()).toEqual([]);
});

test("draws that leave a gap, or do not make the whole, fail a check", () => {
  const gap = [{ name: "a", share: 0.5 }, null, { name: "b", share: 0.5 }];
  expect(moneyJob({ ...smallJob, draws: gap }).value("draws_make_price")).toBe(false);
  const short = [{ name: "a", share: 0.5 }, { name: "b", share: 0.4 }, null];
  expect(moneyJob({ ...smallJob, draws: short }).value("draws_add_up")).toBe(false);
});

test("a quote of others or of the pump that ends before the bid or the start is seen", () => {
  const quoted = (quoted_until: string) =>
    moneyJob({
      ...smallJob,
      subcontracts: [{ work: "electric work", by: "somebody", amount: 500, quoted_until }],
    });
  expect(quoted("2026-12-24").value("prices_outlast_bid")).toBe(false);
  expect(quoted("2026-12-25").value("prices_outlast_bid")).toBe(true);
  expect(quoted("2027-05-31").value("prices_outlast_start")).toBe(false);
  expect(quoted("2027-06-01").value("prices_outlast_start")).toBe(true);
  const pump = (good_until: string) =>
    moneyJob({ ...smallJob, pumps: [{ code: "demo-pump", cost: 900, good_until }] });
  expect(pump("2026-12-24").value("prices_outlast_bid")).toBe(false);
  expect(pump("2027-05-31").value("prices_outlast_start")).toBe(false);
});

test("a price without margin does not stand an overrun of hours", () => {
  const thin = { ...smallJob, margin_wanted: 0, contingency_share: 0, risks: [], rounding_step: 1 };
  expect(moneyJob(thin).value("labor_overrun_covered")).toBe(false);
  expect(moneyJob({ ...thin, labor_overrun_tested: 0 }).value("labor_overrun_covered")).toBe(true);
});
