import { describe, expect, it } from "vitest";
import { unitNamed, unitNames } from "../../../engine/units/unit.js";

// NIST Special Publication 811 (2008), Appendix B.8; its rounded factors have 7 digits. The units of a
// dimension that has no line there follow from those that have one.
const nist: [unit: string, size: number][] = [
  ["ft", 0.3048],
  ["in", 0.0254],
  ["yd", 0.9144],
  ["mm", 1e-3],
  ["cm", 1e-2],
  ["ft²", 9.290304e-2],
  ["ft³", 2.831685e-2],
  ["yd³", 7.645549e-1],
  ["gal", 3.785412e-3],
  ["L", 1e-3],
  ["gal/min", 6.30902e-5],
  ["gal/h", 6.30902e-5 / 60],
  ["ft³/s", 2.831685e-2],
  ["L/min", 1.666667e-5],
  ["ft/s", 0.3048],
  ["ft/h", 8.466667e-5],
  ["in/h", 0.0254 / 3600],
  ["ft/s²", 0.3048],
  ["ft²/s", 9.290304e-2],
  ["ft²/h", 2.58064e-5],
  ["lb", 4.535924e-1],
  ["ton", 9.071847e2], // short ton
  ["t", 1000],
  ["lb/ft³", 1.601846e1],
  ["lb/ft²", 4.882428],
  ["lb/ft", 1.488164],
  ["ton/h", 2.519958e-1],
  ["inHg", 3.386389e3],
  ["kPa", 1e3],
  ["hp", 7.456999e2], // 550 ft·lbf/s
  ["kWh", 3.6e6],
  ["min", 60],
  ["h", 3600],
  ["days", 86400],
];

describe("sizes of units, NIST SP 811 Appendix B.8", () => {
  it.each(nist)("1 %s is %d in SI base units", (name, size) => {
    expect(Number(unitNamed(name).size.toPrecision(7))).toBe(Number(size.toPrecision(7)));
  });

  it("finds exact what is exact there", () => {
    expect(unitNamed("ft").size).toBe(0.3048);
    expect(unitNamed("lb").size).toBe(0.45359237);
    expect(unitNamed("gal").size).toBeCloseTo(3.785411784e-3, 15);
  });
});

describe("compound units follow from their parts", () => {
  const parts: [unit: string, size: number][] = [
    ["gal/h per in", unitNamed("gal/h").size / unitNamed("in").size],
    ["L/h per mm", unitNamed("L/h").size / unitNamed("mm").size],
    ["$/kWh", 1 / unitNamed("kWh").size],
    ["$/ft²", 1 / unitNamed("ft²").size],
    ["$/month", 1 / unitNamed("months").size],
    ["ft²/ton", unitNamed("ft²").size / unitNamed("ton").size],
    ["yd³/h", unitNamed("yd³").size / unitNamed("h").size],
    ["h/day", unitNamed("h").size / unitNamed("days").size],
    ["days/month", unitNamed("days").size / unitNamed("months").size],
  ];
  it.each(parts)("%s", (name, size) => {
    expect(unitNamed(name).size / size).toBeCloseTo(1, 13);
  });
});

describe("the table of units", () => {
  it("has units of positive size, each under its own name", () => {
    for (const name of unitNames()) {
      const unit = unitNamed(name);
      expect(unit.name).toBe(name);
      expect(unit.size).toBeGreaterThan(0);
      expect(Object.isFrozen(unit)).toBe(true);
    }
  });

  it("refuses an unknown unit by name", () => {
    expect(() => unitNamed("furlong")).toThrow(/Unit "furlong" is not known/);
    expect(() => unitNamed("constructor")).toThrow(RangeError);
  });
});
