import { expect, test } from "vitest";
import { calculateFast } from "../../../engine/evaluate/calculate-fast.js";
import { column, modelFor, valuesFor } from "./simulated.js";

const model = modelFor(250);

function counted(bids: readonly { price: number; cost: number; won: boolean }[]) {
  const decided = bids.map((bid, i) => ({ bid_job: `B-${i}`, ...bid }));
  const values = calculateFast(model, valuesFor(model, { decided }));
  return {
    of: (name: string) => column(model, values, name),
    single: (name: string) => values[model.byId.get(name)?.index ?? -1],
  };
}

const bids = (count: number, price: number, margin: number, won: boolean) =>
  Array.from({ length: count }, () => ({ price, cost: price * (1 - margin), won }));

test("bids are counted by price and by margin, each in one class", () => {
  const { of, single } = counted([
    ...bids(2, 9999.99, 0.12, true),
    ...bids(3, 10_000, 0.22, false),
    ...bids(7, 15_000, 0.22, true),
    ...bids(1, 500_000, -0.1, false),
  ]);
  expect(of("by_size.bids")).toEqual([2, 10, 0, 0, 1]);
  expect(of("by_size.won_bids")).toEqual([2, 7, 0, 0, 0]);
  expect(of("by_margin.bids")).toEqual([1, 2, 0, 10, 0, 0]);
  expect(of("by_size.share_won")[1]).toBeCloseTo(0.7, 12);
  expect(single("won_of_all")).toBeCloseTo(9 / 13, 12);
});

test("too few bids tell no share, and say so", () => {
  const { of } = counted(bids(4, 15_000, 0.2, true));
  expect(of("by_size.share_won")[1]).toBe(0);
  expect(of("by_size.won_says")[1]).toBe("too few to tell");
  expect(counted(bids(5, 15_000, 0.2, true)).of("by_size.won_says")[1]).toBe("");
});

test("a bid that stands in two rows is told", () => {
  const [bid] = bids(1, 15_000, 0.2, true);
  const decided = [1, 2].map(() => ({ bid_job: "B-1", ...bid }));
  const values = calculateFast(model, valuesFor(model, { decided }));
  expect(column(model, values, "decided.once").slice(0, 3)).toEqual([false, false, true]);
});
