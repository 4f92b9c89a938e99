import { expect, test } from "vitest";
import { asksOf, sheetsOf } from "../../../sheets/parts/assemble.js";
import { clarifier } from "../../../sheets/parts/clarifier/part.js";
import { part } from "../../../sheets/parts/part.js";
import { waterfall, waterfallParts } from "../../../sheets/templates/waterfall.js";
import { demoOf, waterfallDemo } from "../../support/changed-demo.js";

/** A meter in each line and a heater at the pump: no other part has a word of them. */
const meters = part("Meters", "Invented.", {
  adds: {
    "main loss": "0.0001",
    "line fittings": "IF(bore>2[in],3,5)",
    "running power": "50[W]",
    "circuit current": "2[A]",
  },
});

const sheets = sheetsOf([...waterfallParts.filter((one) => one !== clarifier), meters]);
const other = demoOf({ ...waterfall, sheets, asks: asksOf(sheets) }, "hillside-stream.json");
const [now, before] = [other, waterfallDemo].map(({ changedDemo, shown }) => {
  const values = changedDemo({});
  return (id: string) => shown(values, id) as number;
}) as [(id: string) => number, (id: string) => number];
const more = (id: string): number => now(id) - before(id);

test("a template without a part has no word of it: nothing else names what it brings", () => {
  const named = (demo: typeof other) =>
    demo.model.cells.filter(({ name }) => name.startsWith("clarifier_"));
  expect(named(other)).toEqual([]);
  expect(named(waterfallDemo).length).toBeGreaterThan(5);
});

test.each([1, 2, 3])("what is fitted into line %i loses head there", (line) => {
  const at = (column: string) => `pipe_lines.${column}[${line}]`;
  expect(before(at("bore"))).toBeGreaterThan(0);
  const fitted = before(at("bore")) > 2 ? 3 : 5;
  expect(more(at("loss_open"))).toBeCloseTo(fitted, 9);
  expect(more(at("head_required"))).toBeGreaterThan(0.01);
});

test("what is fitted into the main loses head there, whatever its size", () => {
  const flow = before("total_design_flow");
  expect(more("main_loss")).toBeCloseTo(0.0001 * flow ** 2, 9);
  expect(more("size_comparison.local[3]")).toBeCloseTo(0.0001, 12);
  expect(more("total_dynamic_head")).toBeCloseTo(
    more("main_loss") + more("highest_head_required"),
    9,
  );
});

test("what runs with the pump is in its running cost and on its circuit", () => {
  const hours = (of: typeof now) => of("hours_a_day");
  const a_month = (of: typeof now, watts: number) => (of("pump_watts") + watts) * hours(of);
  expect(now("energy_a_month") / before("energy_a_month")).toBeCloseTo(
    a_month(now, 50) / a_month(before, 0),
    9,
  );
  expect(more("circuit_current") - more("pump_current")).toBeCloseTo(2, 9);
});
