import { expect, test } from "vitest";
import { orderLines, orderPages } from "../../../sheets/parts/papers/order-list.js";
import { pagesAfter } from "../../support/changed-demo.js";

test("each order names the day on which its goods are needed: the job's own, else that on which work starts", () => {
  const needed = (changed: Record<string, unknown>) => pagesAfter(changed).value("order_1_need");
  expect(needed({})).toBe("April 1, 2027, when the work starts");
  expect(needed({ start_month: 6 })).toBe("June 1, 2027, when the work starts");
  expect(needed({ needed_on_site: "2027-04-12" })).toBe("April 12, 2027");
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
