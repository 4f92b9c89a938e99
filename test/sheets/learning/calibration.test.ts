import { describe, expect, test } from "vitest";
import { calculateFast } from "../../../engine/evaluate/calculate-fast.js";
import { learningFormulas } from "../../../sheets/learning/formulas.js";
import { materialFormulas } from "../../../sheets/vocabulary/materials.js";
import { formulaValues } from "../../support/formula-value.js";
import { column, drawFrom, modelFor, valuesFor } from "./simulated.js";

const model = modelFor(250);

/** Jobs of one task each, with so much of the hours by the book; by the office's usual rules. */
function foretold(overruns: readonly number[]) {
  const evidence = overruns.map((over, i) => ({
    ...{ job: `J-${i}`, task: "Dig", ended: "2027-03-01", code: "dig", method: "machine" },
    ...{ quantity: 2000, unit: "yd³", hours: 1000 * over },
  }));
  const values = calculateFast(
    model,
    valuesFor(model, {
      evidence,
      book_rates: [{ code: "dig", means: "Dig", unit: "yd³/hour", book_rate: 2 }],
      job_list: overruns.map((_, i) => ({ job: `J-${i}`, ended: "2027-03-01" })),
    }),
  );
  return {
    of: (key: string) => column(model, values, `foretold.${key}`),
    single: (name: string) => values[model.byId.get(name)?.index ?? -1],
  };
}

test("the first job is foretold by the book alone", () => {
  const { of } = foretold([1.2, 1, 0.9]);
  expect(of("fifty")[0]).toBe(0);
  // t of 4 degrees of freedom for one in five, by NIST's table 0.941; the spread expected is 15 %
  const wide = Math.log(1.15) * Math.sqrt(1 + 1 / 3);
  expect(Math.log(1 + (of("eighty")[0] as number)) / wide).toBeCloseTo(0.941, 3);
});

test("the third job is foretold by the book, which counts as three jobs, and the two before it", () => {
  const logs = [Math.log(1.2), Math.log(1)];
  const center = (logs[0] as number) / 5;
  const { of } = foretold([1.2, 1, 0.9]);
  expect(Math.log(1 + (of("fifty")[2] as number))).toBeCloseTo(center, 9);
  expect(of("over_book")[2]).toBeCloseTo(-0.1, 9);
  expect(of("within_fifty")[2]).toBe(true);
});

test("jobs within P80 are counted", () => {
  const { single } = foretold([1.6, 1, 1, 0.9, 1.1, 1]);
  expect(single("foretold_jobs")).toBe(6);
  expect(single("within_p_eighty")).toBe(5);
  expect(single("within_share")).toBeCloseTo(5 / 6, 9);
  expect(single("calibration_says")).toBe("Jobs do not contradict P80.");
});

test.each([
  ["few jobs say so", [1, 1], "Too few to tell."],
  // each job worse than all before it, as when crews grow tired or scopes creep
  ["jobs that run over more and more", [1.5, 2.3, 3.6, 5.6, 9, 14, 22], "Too many run over P80."],
  ["jobs that never run over", Array.from({ length: 12 }, () => 1), "P80 is wide."],
])("%s", (_, overruns, says) => {
  expect(foretold(overruns).single("calibration_says")).toBe(says);
});

// seeded; of 50 jobs that are as the office expects, 80 % within P80 have a standard error of 5.7 points
test("of jobs as expected, about four in five stay within P80", () => {
  const { normal } = drawFrom(9);
  const found = foretold(Array.from({ length: 50 }, () => Math.exp(Math.log(1.15) * normal())));
  const share = found.single("within_share") as number;
  expect(share).toBeGreaterThan(0.68);
  expect(share).toBeLessThan(0.92);
});

describe("Wilson's interval", () => {
  const ends = (share: number, cases: number, z: number) =>
    formulaValues(
      [...materialFormulas, ...learningFormulas],
      [`WILSON(${share},${cases},0-${z})`, `WILSON(${share},${cases},${z})`],
    );

  // by hand: n / (n + z²), 10 of 10 cases at 95 %
  test("of 10 cases in 10", () => {
    const [low, high] = ends(1, 10, 1.959964);
    expect(low).toBeCloseTo(10 / (10 + 3.841459), 5);
    expect(high).toBeCloseTo(1, 9);
  });

  // its ends are the shares from which the one found lies z standard errors away, which is how it is defined
  test.each([
    [0.3, 20, 1.2816],
    [0.8, 50, 1.2816],
    [0.05, 40, 1.96],
  ])("of %d in %i", (share, cases, z) => {
    for (const end of ends(share, cases, z)) {
      expect(Math.abs(share - end) / Math.sqrt((end * (1 - end)) / cases)).toBeCloseTo(z, 9);
    }
  });
});
