import { expect, test } from "vitest";
import { weatherFormulas } from "../../sheets/vocabulary/weather.js";
import { formulaValues } from "../support/formula-value.js";

const valuesOf = (...texts: string[]) => formulaValues(weatherFormulas, texts);

// forages.oregonstate.edu: a rain day is a calendar day with 0.01 in or more
test("rain days are divided by the days of their month", () => {
  expect(valuesOf("DAY_CHANCE(9[days],30[days],1)", "DAY_CHANCE(9[days],30[days],0.5)")).toEqual([
    0.3, 0.15,
  ]);
});

// computed from the binomial distribution: 20 days at 0.30
test("the binomial distribution of days lost in 20", () => {
  const [mean, deviation, six, nine] = valuesOf(
    "BINOMIAL_MEAN(20,0.3)",
    "BINOMIAL_DEVIATION(20,0.3)",
    "BINOM.DIST(6,20,0.3,TRUE)",
    "BINOM.DIST(9,20,0.3,TRUE)",
  ) as [number, number, number, number];
  expect(mean).toBeCloseTo(6, 12);
  expect(deviation).toBeCloseTo(2.05, 2);
  expect(six).toBeCloseTo(0.608, 3);
  expect(nine).toBeCloseTo(0.952, 3);
});

// by hand: four good days at 0.7 with at most k lost, terms C(k+3,3) 0.7^4 0.3^k
test.each([
  [0, 0.2401],
  [1, 0.52822],
  [2, 0.74431],
  [3, 0.873964],
])("four good days with at most %d lost", (lost, chance) => {
  expect(valuesOf(`WAIT_CHANCE(${lost},4,0.3)`)[0]).toBeCloseTo(chance, 12);
});

// "n good days within n + k" is the same event as "at least n good among n + k"
test.each([
  [5, 3, 0.25],
  [20, 9, 0.3],
  [1, 0, 0.6],
])("%d good days, %d lost, at %f: the binomial distribution says the same", (good, lost, p) => {
  const [wait, among] = valuesOf(
    `WAIT_CHANCE(${lost},${good},${p})`,
    `1-BINOM.DIST(${good - 1},${good + lost},${1 - p},TRUE)`,
  ) as [number, number];
  expect(wait).toBeCloseTo(among, 12);
});

test("mean and deviation of the wait agree with the sum over the distribution", () => {
  const [good, p] = [6, 0.35];
  const terms = Array.from({ length: 120 }, (_, k) => `WAIT_CHANCE(${k},${good},${p})`);
  const upTo = valuesOf(...terms);
  let [mean, square] = [0, 0];
  upTo.forEach((chance, k) => {
    const term = chance - (upTo[k - 1] ?? 0);
    mean += k * term;
    square += k * k * term;
  });
  const [said, deviation] = valuesOf(`WAIT_MEAN(${good},${p})`, `WAIT_DEVIATION(${good},${p})`);
  expect(said).toBeCloseTo(mean, 9);
  expect(deviation).toBeCloseTo(Math.sqrt(square - mean * mean), 9);
});
