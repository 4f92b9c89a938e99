import { describe, expect, test } from "vitest";
import { net1 } from "./net1.js";
import { runEpanet } from "./run-epanet.js";

// Results: the result file net1.out stored beside the example in OpenWaterAnalytics/EPANET.
describe("EPANET example network 1 at hour 0", () => {
  test.each([
    ["9", 1866.1758],
    ["10", 1866.18],
    ["11", 1234.21],
    ["12", 129.34],
    ["21", 191.16],
    ["22", 120.66],
    ["31", 40.81],
    ["110", -766.18],
    ["111", 481.97],
    ["112", 188.7],
    ["113", 29.34],
    ["121", 140.81],
    ["122", 59.19],
  ])("link %s carries %d gal/min", (link, flow) => {
    expect(runEpanet(net1, (results) => results.flow(link))).toBeCloseTo(flow, 1);
  });

  test.each([
    ["10", 1004.347],
    ["11", 985.23],
    ["12", 970.07],
    ["13", 968.873],
    ["21", 971.547],
    ["22", 969.078],
    ["23", 968.645],
    ["31", 967.392],
    ["32", 965.689],
  ])("node %s stands at %d ft", (node, head) => {
    expect(runEpanet(net1, (results) => results.head(node))).toBeCloseTo(head, 2);
  });

  // One-point rule of the EPANET 2.2 User Manual: shut-off at 4/3 of the design head.
  test("the pump's flow and lift lie on its one-point curve", () => {
    const [flow, lift] = runEpanet(net1, ({ flow, head }) => [flow("9"), head("10") - 800]);
    expect(lift).toBeCloseTo(204.347, 2);
    expect(lift).toBeCloseTo((4 / 3) * 250 - (250 / 3 / 1500 ** 2) * (flow ?? 0) ** 2, 2);
  });
});

/** Metres of head per (m³/s)² of a pipe of constant friction factor: 8 f L / (g π² d⁵). */
function resistance(friction: number, length: number, bore: number): number {
  return (8 * friction * length) / (9.81 * Math.PI ** 2 * bore ** 5);
}

/** A 1 m pipe whose only loss is local, of the given resistance in m per (m³/s)². */
function pipe(name: string, from: string, to: string, ofResistance: number): string {
  return `${name} ${from} ${to} 0.001 1000 150 ${(ofResistance * 9.81 * Math.PI ** 2) / 8}`;
}

function metricNetwork(junctions: string[], reservoirs: string[], pipes: string[]): string {
  return [
    ...["[JUNCTIONS]", ...junctions, "[RESERVOIRS]", ...reservoirs, "[PIPES]", ...pipes],
    ...[
      "[TIMES]",
      "DURATION 0",
      "[OPTIONS]",
      "UNITS LPS",
      "HEADLOSS H-W",
      "ACCURACY 1e-7",
      "[END]",
    ],
  ].join("\n");
}

// EPANET rounds its local-loss constant to 0.02517, 0.05 % below 8/(g π²).
const within = (value: number | undefined, expected: number, share = 0.001) =>
  expect(Math.abs((value ?? Number.NaN) / expected - 1)).toBeLessThan(share);

describe("textbook networks of constant friction", () => {
  // Scilab textbook companion 1962, example 9.12 (junction 131.6 m); digits by the closed equations.
  test("three reservoirs at 135, 120 and 112 m", () => {
    const input = metricNetwork(
      ["junction 0 0"],
      ["top 135", "middle 120", "low 112"],
      [
        pipe("a", "top", "junction", 0.7594),
        pipe("b", "junction", "middle", 36.33),
        pipe("c", "junction", "low", 8.168),
      ],
    );
    const [head, ...flows] = runEpanet(input, ({ head, flow }) => [
      head("junction"),
      ...["a", "b", "c"].map(flow),
    ]);
    expect(head).toBeCloseTo(131.605, 2);
    for (const [i, expected] of [2114.4, 565.2, 1549.3].entries()) within(flows[i], expected);
  });

  // Common textbook exercise, answers by h = R q² with one h for all three.
  test("three parallel pipes share 0.5 m³/s", () => {
    const resistances = [0.3, 0.25, 0.2].map((bore) => resistance(0.018, 200, bore));
    const conductance = resistances.reduce((sum, each) => sum + each ** -0.5, 0);
    const input = metricNetwork(
      ["end 0 500"],
      ["start 100"],
      resistances.map((each, i) => pipe(`p${i}`, "start", "end", each)),
    );
    const [head, ...flows] = runEpanet(input, ({ head, flow }) => [
      head("end"),
      ...["p0", "p1", "p2"].map(flow),
    ]);
    within(100 - (head ?? 0), 7.675);
    within(100 - (head ?? 0), (0.5 / conductance) ** 2);
    for (const [i, expected] of [250.4, 158.7, 90.9].entries()) within(flows[i], expected);
  });

  // Civil board-exam problem: f, length and bore of each pipe, 25 m between the reservoirs.
  test("three pipes in series carry 0.100 m³/s", () => {
    const resistances = [
      resistance(0.02, 500, 0.3),
      resistance(0.022, 400, 0.25),
      resistance(0.018, 300, 0.2),
    ];
    const input = metricNetwork(
      ["one 0 0", "two 0 0"],
      ["start 25", "end 0"],
      resistances.map((each, i) =>
        pipe(`p${i}`, ["start", "one", "two"][i] ?? "", ["one", "two", "end"][i] ?? "", each),
      ),
    );
    const flow = runEpanet(input, (results) => results.flow("p1"));
    within(flow, 100.42);
    within(flow, 1000 * Math.sqrt(25 / resistances.reduce((sum, each) => sum + each, 0)));
  });
});
