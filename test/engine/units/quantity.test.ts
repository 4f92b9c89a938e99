import { describe, expect, it } from "vitest";
import { sameDimension } from "../../../engine/units/dimension.js";
import * as quantities from "../../../engine/units/quantity.js";
import { unitNamed } from "../../../engine/units/unit.js";
import * as ofTheTrade from "../../../sheets/vocabulary/quantities.js";

const all = Object.entries({ ...quantities, ...ofTheTrade }).filter(
  (entry): entry is [string, quantities.Quantity] =>
    typeof entry[1] === "object" && "units" in entry[1],
);

describe("every quantity", () => {
  it.each(all)(
    "%s: both units have one dimension, and the trip there and back is exact",
    (_, one) => {
      expect(sameDimension(one.units.us.dimension, one.units.si.dimension)).toBe(true);
      const there = quantities.fromUs(one, "si");
      const back = quantities.ratio(one.units.si, one.units.us);
      expect(there * back).toBeCloseTo(1, 13);
      expect(quantities.fromUs(one, "us")).toBe(1);
    },
  );

  it.each(all)(
    "%s: what is no money or time has a metric unit in SI",
    (_, { kind, money, units }) => {
      const us = ["ft", "in", "gal", "yd", "lb", "ton", "cmil", "Btu"];
      const stays = kind !== "number" || (money && units.us.name !== "$/ft");
      const american = (name: string) => us.some((one) => name.split(/[^A-Za-z]/).includes(one));
      expect(stays || !american(units.si.name)).toBe(true);
    },
  );

  it("is found, whatever is added", () => {
    expect(all.length).toBeGreaterThan(30);
  });
});

describe("ratios are clean numbers", () => {
  const ratios: [from: string, to: string, ratio: number][] = [
    ["ft", "in", 12],
    ["yd", "ft", 3],
    ["yd³", "ft³", 27],
    ["ft²", "m²", 0.09290304],
    ["gal/min", "gal/h", 60],
    ["ft³", "gal", 1728 / 231],
    ["in", "mm", 25.4],
    ["days", "h", 24],
    ["ton", "lb", 2000],
    ["kWh", "kWh", 1],
    ["ft³/s", "gal/min", 448.831168831169],
    ["gal", "L", 3.785411784],
    ["in", "ft", 1 / 12],
  ];
  it.each(ratios)("one %s is so many %s: %d", (from, to, expected) => {
    const found = quantities.ratio(unitNamed(from), unitNamed(to));
    expect(found).toBe(Number(expected.toPrecision(15)));
  });
});

describe("counterpart", () => {
  const pairs: [us: string, si: string][] = [
    ["ft", "m"],
    ["in", "mm"],
    ["gal/min", "L/min"],
    ["yd³", "m³"],
    ["inHg", "kPa"],
    ["W", "W"],
    ["ft³/s", "ft³/s"], // no quantity is shown in it
    ["", ""],
  ];
  it.each(pairs)("%s becomes %s", (us, si) => {
    expect(quantities.counterpart(us, "si").name).toBe(si);
    expect(quantities.counterpart(us, "us").name).toBe(us);
  });
});
