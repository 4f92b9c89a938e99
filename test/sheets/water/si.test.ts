import { expect, test } from "vitest";
import type { InputValues } from "../../../engine/job/record.js";
import type { InputDeclaration } from "../../../engine/template/declare.js";
import { fromUs } from "../../../engine/units/quantity.js";
import { answersOf, waterModel } from "../../support/water.js";
import { yard, yardPumps } from "../../support/water-jobs.js";

/** The same job in metric units. */
function metric(inputs: InputValues): InputValues {
  const model = waterModel("si");
  const convert = (name: string, value: unknown) => {
    const cell = model.byId.get(name) ?? model.byId.get(`${name}[1]`);
    if (typeof value !== "number" || cell === undefined) return value;
    return value * fromUs((cell.declaration as InputDeclaration).quantity, "si");
  };
  const entries = Object.entries(inputs).map(([name, value]) => {
    if (!Array.isArray(value)) return [name, convert(name, value)];
    const rows = value.map((one) =>
      Object.fromEntries(
        Object.entries(one).map(([key, held]) => [key, convert(`${name}.${key}`, held)]),
      ),
    );
    return [name, rows];
  });
  return Object.fromEntries(entries);
}

test("in metric units every figure means the same", () => {
  const us = answersOf(yard, yardPumps);
  const si = answersOf(metric(yard), yardPumps, { units: "si" });
  const off = us.model.cells.filter(({ id, index, declaration, unit }) => {
    const here = us.values[index];
    const cell = si.model.byId.get(id);
    const there = si.values[cell?.index ?? -1];
    if (typeof here !== "number" || typeof there !== "number" || declaration.quantity.money) {
      return false;
    }
    if (unit.name === "date") return false;
    const expected = here * fromUs(declaration.quantity, "si");
    // the passes close in by way of rounding, so they part in the last digits
    return Math.abs(there - expected) > 1e-6 * Math.max(1, Math.abs(expected));
  });
  expect(off.map(({ id }) => id)).toEqual([]);
  expect(si.number("pipe_lines.actual_flow", 1)).toBeCloseTo(60 * 3.785411784, 3);
});
