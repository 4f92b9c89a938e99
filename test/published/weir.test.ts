import { describe, expect, test } from "vitest";
import { lipKinds } from "../../sheets/tables/lips.js";
import { weirFormulas } from "../../sheets/vocabulary/weir.js";
import { formulaValues } from "../support/formula-value.js";

const value = (text: string) => formulaValues(weirFormulas, [text])[0] as number;
const off = (found: number, expected: number) => Math.abs(found / expected - 1);

// A general engineering page's table of rectangular weirs with two end contractions, gal/min: it
// follows 3.33 (L - 0.2 H) H^1.5. Small flows are rounded in the table.
describe("weir table", () => {
  test.each([
    [0.5, 12.8, 38.2, 63.8],
    [0.75, 23.4, 70.2, 117],
    [1, 35.4, 108, 180],
    [1.5, 64.9, 197, 330],
    [2, 98.5, 302, 506],
    [3, 178, 552, 926],
    [6, 477, 1535, 2600],
  ])("%d in of head over 1, 3 and 5 ft", (head, ...flows) => {
    for (const [i, flow] of flows.entries()) {
      const found = value(`WEIR_FLOW(${head}[in],${[1, 3, 5][i]}[ft],2,3.33)/1[gal/min]`);
      expect(off(found, flow)).toBeLessThan(0.016);
    }
  });
});

// Francis weir formula, ft³/s: a table computed from it.
test.each([
  [0.05, 0.0369, 0.0741, 0.1113],
  [0.1, 0.1032, 0.2085, 0.3138],
  [0.2, 0.2859, 0.5838, 0.8816],
  [0.3, 0.5143, 1.0615, 1.6087],
  [0.5, 1.0596, 2.2369, 3.4143],
])("%d ft of head over 1, 2 and 3 ft", (head, ...flows) => {
  for (const [i, flow] of flows.entries()) {
    expect(value(`WEIR_FLOW(${head}[ft],${i + 1}[ft],2,3.33)/1[ft³/s]`)).toBeCloseTo(flow, 4);
  }
});

// Common practice, no source, taken through Francis without contractions: gal/h for an inch of lip.
test.each([
  [100, 0.68],
  [150, 0.89],
  [200, 1.07],
  [180, 1.0],
])("%d gal/h for each inch stand %d in deep on a sharp lip", (flow, depth) => {
  expect(value(`WEIR_HEAD(${flow * 12}[gal/h],1[ft],3.33)/1[in]`)).toBeCloseTo(depth, 2);
});

// Brater and King 1976, broad crest, at 0.2 ft of water, the least of their table (from memory);
// EPA SWMM Reference Manual II, table 6-3: 2.63 is what it comes to below half the stone's depth.
test("a flat stone passes no more than a broad crest at little water", () => {
  const measured = { 1: 2.69, 1.5: 2.62, 2: 2.54, 3: 2.44, 5: 2.34 };
  const flat = Number((lipKinds.data ?? []).find(({ name }) => name === "flat stone")?.coefficient);
  expect(flat).toBeLessThan(2.63);
  expect(flat).toBeLessThan(measured[2]);
  expect(flat).toBeGreaterThan(measured[5]);
});

describe("the sheet of water", () => {
  // Rouse (from memory): critical depth (q²/g)^(1/3), brink 0.715 of it; digits computed.
  test("30 gal/min over a foot of lip", () => {
    const critical = "CRITICAL_DEPTH(30[gal/min],1[ft])";
    expect(value(`${critical}/1[in]`)).toBeCloseTo(0.62, 2);
    expect(value(`0.715*${critical}/1[in]`)).toBeCloseTo(0.44, 2);
    expect(value(`SHEET_SPEED(30[gal/min],1[ft],${critical})/1[ft/s]`)).toBeCloseTo(1.29, 2);
    expect(value(`SHEET_SPEED(30[gal/min],1[ft],0.715*${critical})/1[ft/s]`)).toBeCloseTo(1.81, 2);
  });

  // The same: thrown 0.46 ft by the critical speed, 0.64 ft by that at the brink, over 2 ft.
  test("how far it leaps in 2 ft", () => {
    expect(value("THROW(1.29[ft/s],2[ft])/1[ft]")).toBeCloseTo(0.455, 2);
    expect(value("THROW(1.81[ft/s],2[ft])/1[ft]")).toBeCloseTo(0.638, 2);
  });

  // A university field practice's script: 0.49 m down, 0.25 m forward, 0.791 m/s.
  test("a jet of 0.791 m/s comes 0.25 m forward in 0.49 m", () => {
    expect(value("THROW(0.791[m/s],0.49[m])/1[m]")).toBeCloseTo(0.25, 3);
  });

  test("water in the air is flow times the time of fall", () => {
    // 60 gal/min are a gallon a second; 16.087 ft take a second
    expect(value("WATER_IN_AIR(60[gal/min],16.087[ft])/1[gal]")).toBeCloseTo(1, 9);
  });
});
