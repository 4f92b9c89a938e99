import { expect, test } from "vitest";
import { varianceFormulas } from "../../sheets/vocabulary/variance.js";
import { wordFormulas } from "../../sheets/vocabulary/words.js";
import { formulaValues } from "../support/formula-value.js";

const worthOf = (text: string) =>
  formulaValues([...wordFormulas, ...varianceFormulas], [text])[0] as number;

// education-academia.github.io, cost accounting, standard costing: "14,800 direct labor hours were used at a rate of
// $8.20 per hour. The standard was 15,000 hours at $8.00 per hour": quantity variance $1,600 favorable; by the
// formulas of basiccollegeaccounting.com (Formulas used in standard costing) the rate variance is 0.20 × 14,800 = $2,960.
test("an hour that cost more, and fewer hours than the output allowed", () => {
  expect(worthOf("PRICE_EFFECT(8[$/h],8.2[$/h],14800[h])/1[$]")).toBeCloseTo(2960, 9);
  expect(worthOf("RATE_EFFECT(1,15000[h],1,14800[h])/1[h]*8")).toBeCloseTo(-1600, 9);
});

// from the definitions: 100 units planned in 20 h are 0.2 h each; 120 were made in 30 h
test("quantity and rate, which make the whole difference", () => {
  expect(worthOf("QUANTITY_EFFECT(100,20[h],120)/1[h]")).toBeCloseTo(4, 12);
  expect(worthOf("RATE_EFFECT(100,20[h],120,30[h])/1[h]")).toBeCloseTo(6, 12);
});

test("a task that nobody planned has no planned hours for a unit: nothing is split", () => {
  expect(worthOf("QUANTITY_EFFECT(0,0[h],5)/1[h]")).toBe(0);
  expect(worthOf("RATE_EFFECT(0,0[h],5,3[h])/1[h]")).toBe(0);
});
