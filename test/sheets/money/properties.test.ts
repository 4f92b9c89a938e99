import fc from "fast-check";
import { expect, test } from "vitest";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import { modelOf } from "../../../engine/template/models.js";
import { fromUs } from "../../../engine/units/quantity.js";
import { book, items, moneyJob, smallJob } from "./money-job.js";
import { moneyTemplate } from "./stand-in.js";

const before = moneyJob(smallJob);

test.each(items.filter(({ code }) => code !== "crate").map(({ code }) => String(code)))(
  "the price rises with the cost of %s",
  (code) => {
    const dearer = items.map((row) =>
      row.code === code ? { ...row, cost: Number(row.cost) + 40 } : row,
    );
    const after = moneyJob(smallJob, book(dearer));
    expect(after.figure("total_cost")).toBeGreaterThan(before.figure("total_cost"));
    expect(after.figure("price")).toBeGreaterThan(before.figure("price"));
  },
);

test("any change of a unit cost moves the cost the same way, and never the price the other", () => {
  fc.assert(
    fc.property(fc.nat(items.length - 2), fc.integer({ min: 1, max: 50000 }), (at, cents) => {
      const dearer = items.map((row, i) =>
        i === at ? { ...row, cost: Number(row.cost) + cents / 100 } : row,
      );
      const after = moneyJob(smallJob, book(dearer));
      expect(after.figure("total_cost")).toBeGreaterThan(before.figure("total_cost"));
      expect(after.figure("price")).toBeGreaterThanOrEqual(before.figure("price"));
    }),
    { numRuns: 60 },
  );
});

test("draws are whole cents and make the price to the cent", () => {
  const parts = fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 6 });
  const amount = fc.integer({ min: 1, max: 9_999_999 });
  fc.assert(
    fc.property(parts, amount, (sizes, cents) => {
      const whole = sizes.reduce((a, b) => a + b);
      const draws = sizes.map((size) => ({ name: "part", share: size / whole }));
      const cleared = Array.from({ length: Math.max(0, 3 - draws.length) }, () => null);
      const job = moneyJob({
        ...smallJob,
        draws: [...draws, ...cleared],
        rounding_step: 0.01,
        subcontracts: [{ work: "more", amount: cents / 100, quoted_until: "2027-01-31" }],
      });
      const amounts = job.column("draws.amount").map((value) => Math.round(Number(value) * 100));
      const asked = job.figure("contract_price");
      expect(amounts.reduce((a, b) => a + b)).toBe(Math.round(asked * 100));
      for (const [i, hundredths] of amounts.entries()) {
        expect(job.figure(`draws.amount[${i + 1}]`) * 100).toBeCloseTo(hundredths, 5);
      }
      expect(job.value("draws_make_price")).toBe(true);
    }),
    { numRuns: 80 },
  );
});

test("more confidence never allows fewer days, and more rain never either", () => {
  const allowed = (rain_confidence: number, rain_days: number) =>
    moneyJob({
      ...smallJob,
      rain_confidence,
      rain_months: Array.from({ length: 12 }, () => ({ rain_days })),
    }).figure("days_allowed");
  const confidences = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99];
  for (const rain of [0, 3, 9, 15, 20]) {
    const days = confidences.map((confidence) => allowed(confidence, rain));
    expect(days).toEqual([...days].sort((a, b) => a - b));
  }
  const byRain = [0, 3, 9, 15, 20].map((rain) => allowed(0.8, rain));
  expect(byRain).toEqual([...byRain].sort((a, b) => a - b));
  expect(byRain[0]).toBe(4);
});

test("the price is a multiple of the step, at or above the margin wanted", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 60 }),
      fc.constantFrom(0.01, 1, 5, 25, 50, 100, 1000),
      (margin, rounding_step) => {
        const job = moneyJob({ ...smallJob, margin_wanted: margin / 100, rounding_step });
        const price = job.figure("price");
        expect(Math.abs(price / rounding_step - Math.round(price / rounding_step))).toBeLessThan(
          1e-6,
        );
        expect(job.figure("margin")).toBeGreaterThan(margin / 100 - 1e-5);
        expect(price).toBeLessThan(job.figure("price_exact") + rounding_step + 0.005);
      },
    ),
    { numRuns: 60 },
  );
});

test("in SI the same job has the same price, though its goods and rates are metric", () => {
  const si = modelOf(moneyTemplate, "si");
  const given = before.given.map((value, i) => {
    const cell = si.cells[i];
    const isFixed = cell?.declaration.kind === "published" || cell?.fixed !== undefined;
    if (isFixed) return cell?.fixed ?? null;
    if (typeof value !== "number" || cell?.declaration.kind !== "input") return value;
    return value * fromUs(cell.declaration.quantity, "si");
  });
  const found = calculateFast(si, given);
  for (const name of ["man_hours", "days_allowed", "materials_before_tax", "total_cost", "price"]) {
    expect(found[si.byId.get(name)?.index ?? -1], name).toBeCloseTo(before.figure(name), 6);
  }
  const perMetre = Number(found[si.byId.get("price_per_foot")?.index ?? -1]);
  expect(perMetre * 0.3048).toBeCloseTo(before.figure("price_per_foot"), 6);
});

test("an option has a price of its own, and is drawn when it is taken", () => {
  const option = { description: "lights", code: "gfci-outlet", needed: 2, extra_hours: 4 };
  const open = moneyJob({ ...smallJob, options: [{ ...option, taken: false }] });
  const taken = moneyJob({ ...smallJob, options: [{ ...option, taken: true }] });
  expect(open.figure("price")).toBe(before.figure("price"));
  expect(open.figure("contract_price")).toBe(before.figure("price"));
  // (140 + 11.20 tax + 4 h at 35.5375) with 10 % overhead and 2 % contingency, at 20 % margin
  const cost = Math.round((151.2 + 4 * 35.5375) * 1.12 * 100) / 100;
  expect(open.figure("options.option_cost[1]")).toBeCloseTo(cost, 9);
  expect(open.figure("options.option_price[1]")).toBe(Math.ceil(cost / 0.8 / 25) * 25);
  expect(taken.figure("draws_total")).toBeCloseTo(
    before.figure("price") + open.figure("options.option_price[1]"),
    9,
  );
});
