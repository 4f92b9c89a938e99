import { describe, expect, test } from "vitest";
import { bubblingFormulas } from "../../sheets/vocabulary/bubbling.js";
import { formulaValues } from "../support/formula-value.js";

const value = (text: string) => formulaValues(bubblingFormulas, [text])[0] as number;
const flow = (mouth: number, over: number) =>
  value(`BUBBLE_FLOW(${mouth}[in],${over}[in])/1[gal/min]`);

// USBR Water Measurement Manual 2001, chapter 14, in inches and gal/min, as a published program for it
// (vertPipeFlow, U.S. Geological Survey) has it: 6.17 d^1.25 h^1.35 below 0.37 d, 5.01 d^1.99 h^0.53 over 1.4 d.
describe("an upright pipe", () => {
  test.each([
    [4, 1, 34.9],
    [6, 2, 147.7],
    [8, 1.5, 143.5],
  ])("%d in, %d in of water over it: a weir", (mouth, over, expected) => {
    expect(flow(mouth, over) / expected).toBeCloseTo(1, 2);
  });

  test.each([
    [2, 6, 51.4],
    [4, 12, 294.9],
    [6, 24, 955],
  ])("%d in, %d in of water over it: a jet", (mouth, over, expected) => {
    expect(flow(mouth, over) / expected).toBeCloseTo(1, 2);
  });

  // Lawrence and Braunworth 1906, in feet and ft³/s (from memory): 8.8 D^1.29 H^1.29 and 5.57 D^1.99 H^0.53
  test.each([
    [6, 1],
    [6, 2],
    [8, 2],
    [12, 3],
  ])("%d in, %d in over it: within 15 %% of the older law of the weir", (mouth, over) => {
    const older = 8.8 * (mouth / 12) ** 1.29 * (over / 12) ** 1.29 * 448.831;
    expect(Math.abs(flow(mouth, over) / older - 1)).toBeLessThan(0.15);
  });

  test.each([
    [2, 6],
    [4, 12],
    [6, 24],
  ])("%d in, %d in over it: within 10 %% of the older law of the jet", (mouth, over) => {
    const older = 5.57 * (mouth / 12) ** 1.99 * (over / 12) ** 0.53 * 448.831;
    expect(Math.abs(flow(mouth, over) / older - 1)).toBeLessThan(0.1);
  });

  test.each([1, 2, 3, 6, 12])("%d in: rises without a step from weir to jet", (mouth) => {
    const shares = [0.3, 0.369, 0.371, 0.6, 1, 1.399, 1.401, 2];
    const flows = shares.map((share) => flow(mouth, share * mouth));
    for (let i = 1; i < flows.length; i++) {
      expect(flows[i]).toBeGreaterThan(flows[i - 1] as number);
    }
    expect((flows[2] as number) / (flows[1] as number)).toBeLessThan(1.01);
    expect((flows[6] as number) / (flows[5] as number)).toBeLessThan(1.01);
  });
});

// Free fall, g 32.174 ft/s²: from 1 ft the water is 8.02 ft/s fast; 4 ft take half a second.
test("speed and drift are those of free fall", () => {
  expect(value("JET_SPEED(1[ft])/1[ft/s]")).toBeCloseTo(8.0217, 3);
  expect(value("DRIFT(10[ft/s],4[ft])/1[ft]")).toBeCloseTo(4.986, 3);
});

// Nusselt: water at 20 °C, 1.004e-6 m²/s, 0.1 kg/s for each meter of width runs down 0.314 mm thick.
test("a film is as thick as Nusselt's", () => {
  const film = value("FILM(6[L/min],1[m],1.0807[10⁻⁵ ft²/s])/1[in]") * 25.4;
  expect(film).toBeCloseTo((3 * 1.004e-6 * 1e-4) ** (1 / 3) * 9.80665 ** (-1 / 3) * 1000, 2);
});
