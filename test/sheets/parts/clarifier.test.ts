import { expect, test } from "vitest";
import { pagesAfter } from "../../support/changed-demo.js";

const without = pagesAfter();
const fitted = { clarifier_included: true, clarifier_flow_limit: 200, clarifier_loss: 2 };
const within = pagesAfter(fitted);
const number = (of: typeof without, id: string) => of.value(id) as number;
const tells = (lines: readonly string[]) => lines.some((line) => /clarifier/i.test(line));

test("a clarifier loses head as the square of the flow, whatever the main's size", () => {
  const [flow, local] = [number(within, "total_design_flow"), number(within, "clarifier_local")];
  expect(local).toBeCloseTo(2 / 200 ** 2, 12);
  const lost = number(within, "total_dynamic_head") - number(without, "total_dynamic_head");
  expect(lost).toBeCloseTo(2 * (flow / 200) ** 2, 9);
  const row = "size_comparison.local[3]";
  expect(number(within, row) - number(without, row)).toBeCloseTo(local, 12);
});

test("its power runs the same hours as the pump, on the same circuit", () => {
  const year = (of: typeof without) =>
    number(of, "energy_cost_a_year") /
    (number(of, "pump_watts") + number(of, "clarifier_load")) /
    number(of, "energy_rate");
  expect(number(within, "clarifier_load")).toBe(40);
  expect(year(within)).toBeCloseTo(year(without), 9);
  const more = number(within, "circuit_current") - number(within, "pump_current");
  const before = number(without, "circuit_current") - number(without, "pump_current");
  expect(more - before).toBeCloseTo(40 / number(within, "supply_voltage"), 9);
});

test("it is bought, fitted, told to crew and customer, and only where it is wanted", () => {
  expect(number(within, "material_cost")).toBeGreaterThan(number(without, "material_cost"));
  for (const page of ["crew", "proposal"] as const) {
    expect(tells(within[page])).toBe(true);
    expect(tells(without[page])).toBe(false);
  }
});
