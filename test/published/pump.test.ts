import { describe, expect, test } from "vitest";
import { pumpFormulas } from "../../sheets/vocabulary/pump.js";
import { formulaValues } from "../support/formula-value.js";

const value = (text: string) => formulaValues(pumpFormulas, [text])[0] as number;

// DOE Fundamentals Handbook, Fluid Flow: 1800 to 3600 rpm, 400 gal/min at 48 ft become 800 at 192 ft.
test("twice the speed: twice the flow, four times the head", () => {
  const slope = "CURVE_SLOPE(300[gal/min],50[ft],500[gal/min],46[ft])";
  const start = `CARRIED_BACK(300[gal/min],50[ft],${slope})`;
  expect(value(`LINE_HEAD(400[gal/min],${start},${slope},1)/1[ft]`)).toBeCloseTo(48, 9);
  expect(value(`LINE_HEAD(800[gal/min],${start},${slope},2)/1[ft]`)).toBeCloseTo(192, 9);
  expect(value(`SPEED_FOR_DUTY(800[gal/min],192[ft],${start},${slope})`)).toBeCloseTo(2, 9);
});

// Crane Technical Paper 410, problem 7-33: 400 gal/min at 126 ft, 3500 to 1700 rpm: 194.3 at 29.7 ft.
test("less than half the speed", () => {
  const slow = 1700 / 3500;
  expect(400 * slow).toBeCloseTo(194.3, 1);
  const slope = "CURVE_SLOPE(300[gal/min],140[ft],400[gal/min],126[ft])";
  const start = `CARRIED_BACK(400[gal/min],126[ft],${slope})`;
  expect(value(`LINE_HEAD(${400 * slow}[gal/min],${start},${slope},${slow})/1[ft]`)).toBeCloseTo(
    29.7257,
    4,
  );
});

describe("power into the water", () => {
  // Crane Technical Paper 410, problem 7-15: 100 gal/min against 421 ft at 70 %: 15.2 hp.
  test("100 gal/min against 421 ft", () => {
    expect(value("WATER_POWER(100[gal/min],421[ft])/1[W]") / 745.7 / 0.7).toBeCloseTo(15.19, 2);
  });

  // Crane Technical Paper 410, problem 7-34: efficiencies .707, .95, .96; 117 hp; $83,970 a year.
  test("700 gal/min against 428 ft, 8,000 h a year at $0.12", () => {
    const shaft = value("WATER_POWER(700[gal/min],428[ft])/1[W]") / (70.7 / 100);
    expect(shaft / 745.7).toBeCloseTo(107, 0);
    const drawn = shaft / 0.95 / 0.96;
    expect(drawn / 745.7).toBeCloseTo(117, 0);
    expect(Math.abs(((drawn / 1000) * 8000 * 0.12) / 83970 - 1)).toBeLessThan(0.002);
  });

  // Hydraulic Institute Engineering Data Book, pump table: 900 gal/min, 155 ft, 78 %: 45.2 hp.
  test.each([
    [500, 186, 0.65, 36.1],
    [900, 155, 0.78, 45.2],
    [1000, 140, 0.76, 46.5],
  ])("%d gal/min against %d ft at efficiency %d: %d hp", (flow, head, efficiency, horsepower) => {
    const shaft = value(`WATER_POWER(${flow}[gal/min],${head}[ft])/1[W]`) / 745.7 / efficiency;
    expect(shaft).toBeCloseTo(horsepower, 1);
  });
});

// Hydraulic Institute Engineering Data Book, worked example 1.A.3: 265 ft static, h = 265 + 7.75e-4 Q².
test("a Newton step on a system curve never passes the answer", () => {
  // a straight curve 340 - 0.1 Q meets 265 + 7.75e-4 Q² at (√(0.01 + 4·7.75e-4·75) - 0.1)/(2·7.75e-4)
  const answer = (Math.sqrt(0.01 + 4 * 7.75e-4 * 75) - 0.1) / (2 * 7.75e-4);
  let flow = 700;
  for (let pass = 0; pass < 5; pass += 1) {
    const next = value(`PUSH_PASS(${flow}[gal/min],0,0.000775,-0.1,75[ft])/1[gal/min]`);
    expect(next).toBeLessThan(flow);
    expect(next).toBeGreaterThanOrEqual(answer - 1e-9);
    flow = next;
  }
  expect(flow).toBeCloseTo(answer, 6);
});
