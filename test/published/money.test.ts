import fc from "fast-check";
import { expect, test } from "vitest";
import { moneyFormulas } from "../../sheets/vocabulary/money.js";
import { formulaValues } from "../support/formula-value.js";

const worthOf = (text: string) => formulaValues(moneyFormulas, [text])[0] as number;

// contractorcfo.org, Markup vs margin explained; printed to the tenth of a per cent, 67 -> 40 to the whole
test.each([
  [10, 9.1],
  [15, 13.0],
  [20, 16.7],
  [25, 20.0],
  [30, 23.1],
  [40, 28.6],
  [50, 33.3],
  [100, 50.0],
])("a markup of %d % is a margin of %f %", (markup, margin) => {
  expect(worthOf(`MARGIN_FROM_MARKUP(${markup}/100)*100`)).toBeCloseTo(margin, 1);
  const back = worthOf(`MARKUP_FROM_MARGIN(${margin}/100)*100`);
  expect(Math.abs(back - markup)).toBeLessThan(0.25);
});

test("a markup of 67 % is a margin of 40 %", () => {
  expect(worthOf("MARGIN_FROM_MARKUP(0.67)*100")).toBeCloseTo(40, 0);
});

// contractorcfo.org: $80,000 of cost at 20 % markup and at 20 % margin
test("twenty per cent on $80,000 of cost", () => {
  expect(worthOf("PRICE_AT_MARKUP(80000[$],0.2)/1[$]")).toBeCloseTo(96000, 9);
  expect(worthOf("PRICE_AT_MARGIN(80000[$],0.2)/1[$]")).toBeCloseTo(100000, 9);
});

// Remodeling magazine, How much does an employee cost: 42.15 % on $20 an hour is $28.43
test("a burdened hour", () => {
  expect(worthOf("BURDENED_RATE(20[$/h],0.4215)/1[$/h]")).toBeCloseTo(28.43, 9);
});

// three-point estimates: 5, 8, 14 (schematex.js.org, PERT example): mean 8.5, deviation 1.5
test("a three-point estimate", () => {
  expect(worthOf("PERT_MEAN(5[$],8[$],14[$])/1[$]")).toBeCloseTo(8.5, 12);
  expect(worthOf("PERT_DEVIATION(5[$],14[$])/1[$]")).toBeCloseTo(1.5, 12);
});

// same example: four tasks with deviations 0.5, 1.5, 0.5, 0.33 have 1.69 together
test("deviations add by their squares", () => {
  const widths = [3, 9, 3, 2];
  const squares = widths.map((width) => `PERT_DEVIATION(0[$],${width}[$])^2`).join("+");
  expect(worthOf(`SQRT(${squares})/1[$]`)).toBeCloseTo(1.69, 2);
});

test("packs: 110 units that rounding left at 110.0000000001 are not 111", () => {
  expect(worthOf("BUY_IN_PACKS(100*1.1,1)")).toBe(110);
  expect(worthOf("BUY_IN_PACKS(43.2,20)")).toBe(60);
  expect(worthOf("BUY_IN_PACKS(60,20)")).toBe(60);
});

test("what is bought is never under what is needed, nor a whole pack over", () => {
  const needed = fc.double({ min: 0.01, max: 1e4, noNaN: true });
  const pack = fc.integer({ min: 1, max: 400 }).map((hundredths) => hundredths / 4);
  const cases = fc.sample(fc.tuple(needed, pack), { numRuns: 300, seed: 11 });
  const bought = formulaValues(
    moneyFormulas,
    cases.map(([want, size]) => `BUY_IN_PACKS(${want.toFixed(8)},${size})`),
  );
  cases.forEach(([want, size], i) => {
    const got = bought[i] as number;
    expect(got).toBeGreaterThan(want - 1e-6);
    expect(got).toBeLessThan(want + size + 1e-6);
    expect(Math.abs(got / size - Math.round(got / size))).toBeLessThan(1e-9);
  });
});
