import { describe, expect, test } from "vitest";
import { orderLines, orderPages } from "../../../sheets/parts/papers/order-list.js";
import { pagesAfter } from "../../support/changed-demo.js";

test("each order says when its goods are needed: the job's own day, else the start as the proposal says it", () => {
  const needed = (changed: Record<string, unknown>) => pagesAfter(changed).value("order_1_need");
  expect(needed({})).toBe("the start of the work, April 2027");
  expect(needed({ start_month: 6 })).toBe("the start of the work, June 2027");
  expect(needed({ start_words: "in the week of June 14, 2027" })).toBe(
    "the start of the work, in the week of June 14, 2027",
  );
  expect(needed({ needed_on_site: "2027-04-12" })).toBe("April 12, 2027");
});

test("goods stand on an order as the office book calls them; what people named keeps its name", () => {
  const { value } = pagesAfter();
  const rows = Array.from({ length: orderLines }, (_, i) => i + 1);
  const page = (k: number) =>
    rows.map((row) => String(value(`order_${k}.what[${row}]`))).join("\n");
  expect(page(2)).toContain("pipe, PVC schedule 40, 2 in (our no. pipe-2)");
  expect(page(1)).toContain("storage crate, 27 in by 16 in by 17 in (our no. crate)");
  // what lies under basin and pipes comes in one pile
  expect(page(3)).toContain("bedding sand (our no.");
  // one item for two uses is told by its use
  expect(page(3)).toContain("fall stones, up to 30 in, none over 433 lb (our no. stone-boulder)");
});

describe("an order says the size or rating that its supplier would ask back for", () => {
  const ordered = (changed: Record<string, unknown>) => {
    const { value } = pagesAfter(changed);
    const pages = Array.from({ length: orderPages }, (_, i) => i + 1);
    const rows = Array.from({ length: orderLines }, (_, i) => i + 1);
    return pages
      .flatMap((k) => rows.map((row) => String(value(`order_${k}.what[${row}]`))))
      .join("\n");
  };
  const ours = {
    electrical_work: "by us",
    subcontracts: [],
    supply_voltage: 120,
    breaker_rating: 25,
    wire_size: "10 AWG",
  };
  test.each([
    [{}, "reducer bushing, main to branch, from 4 in, to 1-1/2 in: 1, to 2 in: 2 (our no."],
    [{ main_size: "2 in" }, "reducer bushing, main to branch, from 2 in, to 1-1/2 in: 1 (our no."],
    [{}, "pump outlet 4 in, pipe 4 in"],
    [{ pump_choice: "P-130V" }, "pump outlet 3 in, pipe 4 in"],
    [{}, "large pump, variable speed, for 240 V, outlet 4 in (our no."],
    [{}, "fill pipe, 3/4 in polyethylene, bore 3/4 in (our no."],
    [{}, "drain valve for the winter, for a main of 4 in (our no."],
    [{}, "light for under water, 3 W, 12 V (our no."],
    [{}, "cable for lights, direct burial, two conductors of 12 AWG (our no."],
    [{}, "transformer for lights, 150 W, to 12 V (our no."],
    [ours, "breaker, single pole, 25 A, 120 V (our no."],
    [ours, "outlet with ground-fault protection, weatherproof box, 25 A, 120 V (our no."],
    [
      ours,
      "conduit, plastic, 3/4 in, with a share of fittings, for three conductors of 10 AWG (our no.",
    ],
  ])("%j: %s", (changed, words) => {
    expect(ordered(changed)).toContain(words);
  });
});

test("an order has its number, or a field for it, and says where to ship", () => {
  const { value } = pagesAfter({ order_number: "P-7", stone_drop: "left of the drive" });
  expect([1, 2].map((k) => value(`order_${k}_number`))).toEqual(["P-7-1", "P-7-2"]);
  expect(value("order_1_ship")).toMatch(/^22 Sample Hill Road .*Set down: left of the drive$/);
  expect(pagesAfter().value("order_1_number")).toBe("");
});

test("an order of a bid that does not stand, or has no price yet, is a draft", () => {
  const title = (changed: Record<string, unknown>) => pagesAfter(changed).value("order_1_title");
  expect(title({})).toBe("Purchase order");
  expect(title({ runs: [] })).toMatch(/^DRAFT, not to be sent/);
  expect(title({ people_to_carry: 4, crew_size: 0.5 })).toMatch(/^DRAFT, not to be sent/);
});

test("each line of an order says quantity and unit price; both make its amount, and the amounts its sum", () => {
  const { value } = pagesAfter();
  let lines = 0;
  for (let k = 1; k <= orderPages; k++) {
    let sum = 0;
    for (let row = 1; row <= orderLines; row++) {
      const said = String(value(`order_${k}.quantity[${row}]`));
      const amount = value(`order_${k}.cost[${row}]`) as number;
      sum += amount;
      if (said === "") continue;
      lines += 1;
      const [, quantity = "", price = ""] = /^([\d.,]+) .*, at \$([\d.,]+)$/.exec(said) ?? [];
      const product = Number(quantity.replace(",", "")) * Number(price.replace(",", ""));
      expect(Math.abs(product / amount - 1), said).toBeLessThan(0.005);
    }
    expect(value(`order_${k}_total`)).toBeCloseTo(sum, 6);
  }
  expect(lines).toBeGreaterThan(30);
});
