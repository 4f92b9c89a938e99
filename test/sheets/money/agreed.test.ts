import { expect, test } from "vitest";
import { moneyJob, smallJob } from "./money-job.js";

// the small job costs $10,523.62 and is priced at $13,175

test("a discount is a line: the contract and its draws fall by it, the price does not", () => {
  const job = moneyJob({ ...smallJob, discount: 675 });
  expect(job.figure("price")).toBe(13175);
  expect(job.figure("contract_price")).toBe(12500);
  expect(job.figure("draws_total")).toBeCloseTo(12500, 9);
  expect(job.figure("contract_margin")).toBeCloseTo(1 - 10523.62 / 12500, 9);
});

test.each([
  [1482, true], // 11,693 leaves 10.0005%
  [1483, false], // 11,692 leaves 9.993%
])("a discount of $%d against a least margin of 10%%: %s", (discount, holds) => {
  expect(moneyJob({ ...smallJob, discount }).value("margin_held")).toBe(holds);
});

test("the customer's number shows what it leaves, and changes nothing", () => {
  const job = moneyJob({ ...smallJob, customer_number: 12000 });
  expect(job.figure("contract_price")).toBe(13175);
  expect(job.figure("number_margin")).toBeCloseTo(1 - 10523.62 / 12000, 9); // 12.3%
  expect(job.figure("number_markup")).toBeCloseTo(12000 / 10523.62 - 1, 9); // 14.0%
  expect(job.figure("number_gap")).toBeCloseTo(1175, 9);
});

test.each([
  [{}, 13175, true],
  [{ deposit_share: 0.3 }, 3952.5, true], // the first draw is 30%
  [{ deposit_share: 0.1 }, 1317.5, false],
  [{ deposit_share: 0.1, deposit_most: 1000 }, 1000, false], // the lesser of both
])("deposit limit %j allows $%d", (rule, allowed, holds) => {
  const job = moneyJob({ ...smallJob, ...rule });
  expect(job.figure("deposit_allowed")).toBeCloseTo(allowed, 9);
  expect(job.value("deposit_held")).toBe(holds);
});
