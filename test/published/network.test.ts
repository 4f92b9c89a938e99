import { expect, test } from "vitest";
import { pipeFormulas } from "../../sheets/vocabulary/pipe.js";
import { formulaValues } from "../support/formula-value.js";

/** Flow in m³/s that a head in m drives through a resistance in m per (m³/s)². */
function flows(pairs: readonly (readonly [head: number, resistance: number])[]): number[] {
  // ft for each (gal/min)²: one gal/min is 6.30901964e-5 m³/s
  const local = (resistance: number) => (resistance * 6.30901964e-5 ** 2) / 0.3048;
  return formulaValues(
    pipeFormulas,
    pairs.map(([head, resistance]) => `FLOW_AT_HEAD(${head}[m],0,${local(resistance)})/1[m³/s]`),
  );
}

/** Of a pipe of constant friction factor: 8 f L / (g π² d⁵). */
const resistance = (factor: number, length: number, bore: number) =>
  (8 * factor * length) / (9.81 * Math.PI ** 2 * bore ** 5);

// Scilab textbook companion 1962, example 9.12: levels 135, 120, 112 m; junction at 131.6 m.
test("three reservoirs balance at their junction", () => {
  const junction = 131.605;
  const [top, middle, low] = flows([
    [135 - junction, 0.7594],
    [junction - 120, 36.33],
    [junction - 112, 8.168],
  ]) as [number, number, number];
  expect(top).toBeCloseTo(2.1144, 3);
  expect(middle).toBeCloseTo(0.5652, 3);
  expect(low).toBeCloseTo(1.5493, 3);
  expect(top - middle - low).toBeCloseTo(0, 3);
});

// Common textbook exercise, answers by h = R q² with one h for all: 7.675 m, f 0.018, 200 m each.
test("three parallel pipes share 0.5 m³/s", () => {
  const found = flows([0.3, 0.25, 0.2].map((bore) => [7.675, resistance(0.018, 200, bore)]));
  expect(found[0]).toBeCloseTo(0.2504, 4);
  expect(found[1]).toBeCloseTo(0.1587, 4);
  expect(found[2]).toBeCloseTo(0.0909, 4);
});

// Civil board-exam problems: bores 250, 200, 150 mm; f 0.02; 8.0 m.
test("three parallel pipes under 8 m", () => {
  const pipes: [number, number][] = [
    [600, 0.25],
    [400, 0.2],
    [300, 0.15],
  ];
  const found = flows(pipes.map(([length, bore]) => [8, resistance(0.02, length, bore)]));
  for (const [i, flow] of [0.0888, 0.0622, 0.035].entries()) expect(found[i]).toBeCloseTo(flow, 4);
});

// Civil board-exam problem: 500 m/300 mm/.020, 400/250/.022, 300/200/.018 in series, 25 m: 0.100 m³/s.
test("three pipes in series under 25 m", () => {
  const all =
    resistance(0.02, 500, 0.3) + resistance(0.022, 400, 0.25) + resistance(0.018, 300, 0.2);
  expect(flows([[25, all]])[0]).toBeCloseTo(0.10042, 4);
});
