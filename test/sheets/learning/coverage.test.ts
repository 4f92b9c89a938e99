import { expect, test } from "vitest";
import { drawFrom, type LearnedRate, learn, type Simulated } from "./simulated.js";

/*
 * Does an interval of 80 % hold the truth in 80 of 100 cases? Asked of invented jobs whose true rates are known, by
 * the formulas of the workbook themselves. Of 500 cases the share that holds has a standard error of
 * sqrt(0.8 x 0.2 / 500) = 1.8 points, so that 75 to 85 % is 2.8 of them to either side: by chance alone a right
 * interval would miss that about once in 200 seeds, wherefore the seed is fixed.
 */
const cases = 540;
const priorSpread = Math.log(1.3);
const [priorJobs, bookWorth] = [4, 3];

/** As the prior has it: the spread a scaled inverse chi-square draw, the rate around the book's. */
const asExpected: Simulated["truth"] = ({ normal, chiSquare }) => {
  const sigma = Math.sqrt((priorJobs * priorSpread ** 2) / chiSquare(priorJobs));
  return { sigma, theta: (sigma / Math.sqrt(bookWorth)) * normal() };
};

const offBy =
  (factor: number): Simulated["truth"] =>
  () => ({ sigma: priorSpread, theta: Math.log(factor) });

/** So many cases, as many rates to a workbook as it has room for. */
function manyRates(
  jobs: number,
  truth: Simulated["truth"],
  seed: number,
  wanted = cases,
): LearnedRate[] {
  const rows = 250;
  const draw = drawFrom(seed);
  const rates = Math.min(90, Math.floor(rows / jobs));
  const found: LearnedRate[] = [];
  while (found.length < wanted) found.push(...learn(rows, { rates, jobs, truth }, draw));
  return found.slice(0, wanted);
}

const shareOf = (all: readonly LearnedRate[], holds: (one: LearnedRate) => boolean): number =>
  all.filter(holds).length / all.length;

const holdsMean = ({ book, theta, low, high }: LearnedRate) => {
  const truth = book * Math.exp(theta);
  return low <= truth && truth <= high;
};

const byJobs = [5, 40] as const;

test.each(byJobs)("with %i jobs, 80 % intervals hold the true mean rate in 75 to 85 %", (jobs) => {
  const found = manyRates(jobs, asExpected, 2027);
  const share = shareOf(found, holdsMean);
  expect(found.every((one) => Math.round(one.jobs) === jobs)).toBe(true);
  expect(share).toBeGreaterThan(0.75);
  expect(share).toBeLessThan(0.85);
});

test.each(byJobs)(
  "with %i jobs, the wide interval holds a next large job in 75 to 85 %",
  (jobs) => {
    const next = drawFrom(7);
    const share = shareOf(
      manyRates(jobs, asExpected, 2028),
      ({ book, theta, sigma, nextLow, nextHigh }) => {
        const rate = book * Math.exp(theta + sigma * next.normal());
        return nextLow <= rate && rate <= nextHigh;
      },
    );
    expect(share).toBeGreaterThan(0.75);
    expect(share).toBeLessThan(0.85);
  },
);

// a book that is 30 % off is worth less than it says: told, not hidden
test("what a wrong book does to the intervals", () => {
  const rows = [
    ["right, spread 30 %", offBy(1)],
    ["30 % too slow", offBy(1 / 0.7)],
    ["30 % too fast", offBy(0.7)],
  ] as const;
  const table = rows.flatMap(([book, truth]) =>
    byJobs.map((jobs) => {
      const found = manyRates(jobs, truth, 2029, 150);
      const away = found.map(({ rate, book: of, theta }) => Math.log(rate / of) - theta);
      const mean = away.reduce((sum, x) => sum + x, 0) / away.length;
      const wide = found.map(({ low, high }) => Math.log(high / low) / 2);
      return {
        "the book's rate is": book,
        jobs,
        "intervals of 80 % that hold": `${(100 * shareOf(found, holdsMean)).toFixed(1)} %`,
        "learned over true, mean": `${(100 * (Math.exp(mean) - 1)).toFixed(1)} %`,
        "half width, mean": `${(100 * (Math.exp(wide.reduce((a, b) => a + b, 0) / wide.length) - 1)).toFixed(1)} %`,
        share: shareOf(found, holdsMean),
      };
    }),
  );
  console.table(table.map(({ share: _, ...said }) => said));
  const held = (at: number) => table[at]?.share as number;
  // more jobs mend a wrong book
  expect(held(3)).toBeGreaterThan(held(2));
  expect(held(5)).toBeGreaterThan(held(4));
});
