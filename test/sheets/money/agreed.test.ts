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

const option = (description: string, other_cost: number, taken = true) => ({
  description,
  other_cost,
  taken,
});

test("what could go: the options taken, dearest first, each with the margin at the customer's number then", () => {
  const options = [option("a bench", 200), option("lights", 900), option("a wall", 500, false)];
  const job = moneyJob({ ...smallJob, options, customer_number: 13000 });
  // 900 and 12 % of overhead and contingency are 1,008, at a margin of 20 % 1,260, up to 1,275; the bench 280, up to 300
  expect(job.column("what_could_go.option").slice(0, 3)).toEqual(["lights", "a bench", ""]);
  expect(job.column("what_could_go.saved").slice(0, 3)).toEqual([1275, 300, 0]);
  expect(job.figure("contract_price")).toBe(13175 + 1575);
  expect(job.figure("what_could_go.price_left[1]")).toBeCloseTo(13475, 9);
  expect(job.figure("what_could_go.price_left[2]")).toBeCloseTo(13175, 9);
  // without the lights $10,523.62 and the bench's $224 are left of cost
  expect(job.figure("number_margin")).toBeCloseTo(1 - (10523.62 + 1008 + 224) / 13000, 9);
  expect(job.figure("what_could_go.margin_left[1]")).toBeCloseTo(1 - 10747.62 / 13000, 9);
  expect(job.figure("what_could_go.margin_left[2]")).toBeCloseTo(1 - 10523.62 / 13000, 9);
});

test("options of one price come out one after the other", () => {
  const options = [option("left", 500), option("right", 500)];
  const job = moneyJob({ ...smallJob, options });
  expect(job.column("what_could_go.option").slice(0, 2).sort()).toEqual(["left", "right"]);
});

test("markups by kind: of each kind's cost with its share of overhead and contingency", () => {
  // materials 4,044, labor 2,394.66, equipment 1,950, others 500 of 8,888.66; in all 10,523.62
  const share = 10523.62 / 8888.66;
  const job = moneyJob({ ...smallJob, material_markup: 0.4, others_markup: 0.1 });
  // the one markup is 25 %
  const added = share * (4044 * (0.4 - 0.25) + 500 * (0.1 - 0.25));
  expect(job.figure("price_exact")).toBeCloseTo(10523.62 / 0.8 + added, 6);
  expect(job.column("markups.markup")).toEqual([0.4, 0.25, 0.25, 0.1]);
  const same = moneyJob({ ...smallJob, material_markup: 0.25, labor_markup: 0.25 });
  expect(same.figure("price_exact")).toBeCloseTo(10523.62 / 0.8, 9);
});

test("an option carries the markup of what it is made of", () => {
  const options = [option("lights", 900)];
  const job = moneyJob({ ...smallJob, options, others_markup: 0.5 });
  expect(job.figure("options.option_exact[1]")).toBeCloseTo(900 * 1.12 * 1.5, 6);
});

const quote = { code: "liner-45mil", supplier: "Invented depot", good_until: "2027-05-31" };

test("a quote for this job takes the place of the book's price, with its tax, supplier and date", () => {
  const job = moneyJob({ ...smallJob, job_quotes: [{ ...quote, cost: 0.9 }] });
  expect(job.ofLine("liner-45mil", "cost")).toBeCloseTo(360, 9); // 400 ft², was 440
  expect(job.ofLine("liner-45mil", "tax")).toBeCloseTo(28.8, 9);
  expect(job.ofLine("liner-45mil", "supplier")).toBe("Invented depot");
  expect(job.figure("materials_before_tax")).toBeCloseTo(3000 - 80, 9);
  expect(job.value("job_quotes.unit[1]")).toBe("ft²");
  expect(job.figure("job_quotes.book_cost[1]")).toBeCloseTo(1.1, 9);
  expect(job.value("job_quotes.quote_used[1]")).toBe(true);
  // the book's own row is untouched
  expect(job.column("items.cost")).toContain(1.1);
});

test("the pump may be quoted for this job as well", () => {
  const job = moneyJob({ ...smallJob, job_quotes: [{ ...quote, code: "demo-pump", cost: 800 }] });
  expect(job.figure("pump_cost")).toBe(800);
  expect(job.figure("material_cost")).toBeCloseTo(3072 + 800 * 1.08, 9);
});
