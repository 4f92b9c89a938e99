import { describe, expect, test } from "vitest";
import { solveWithEpanet } from "./epanet.js";
import { solveByHalving } from "./exact.js";
import { randomNetworks } from "./generate.js";
import type { NetworkSolution, PipeNetwork } from "./pipe-network.js";
import { sheetsAnswers, solveWithSheets } from "./sheets.js";

/** Worst gaps in gal/min and ft; a flow may also be within 0.1 %. */
function gap(sheets: NetworkSolution, other: NetworkSolution): { flow: number; head: number } {
  const flows = [sheets.total, ...sheets.flows].map((flow, i) => {
    const expected = [other.total, ...other.flows][i] ?? Number.NaN;
    return Math.abs(flow - expected) <= 0.001 * expected ? 0 : Math.abs(flow - expected);
  });
  return {
    flow: Math.max(...flows),
    head: Math.max(
      Math.abs(sheets.manifoldHead - other.manifoldHead),
      Math.abs(sheets.pumpHead - other.pumpHead),
    ),
  };
}

// NETWORK_SEED=42 tries other networks.
const seed = Number(process.env.NETWORK_SEED ?? 20260301);
const networks = randomNetworks(seed, 208);
const worst = (gaps: { flow: number; head: number }[]) => ({
  flow: Math.max(...gaps.map(({ flow }) => flow)),
  head: Math.max(...gaps.map(({ head }) => head)),
});

describe("the sheet Balance on 208 random networks, 13 of each kind", () => {
  const solved = networks.map(solveWithSheets);

  test("agrees with EPANET: each flow to 0.1 % or 0.01 gal/min, heads to 0.01 ft", () => {
    const { flow, head } = worst(
      networks.map((network, i) => gap(solved[i] as NetworkSolution, solveWithEpanet(network))),
    );
    expect(flow).toBeLessThan(0.01);
    expect(head).toBeLessThan(0.01);
  });

  test("agrees with plain halving to 0.0001 gal/min", () => {
    const gaps = networks.flatMap((network, i) => {
      const halved = solveByHalving(network);
      return halved.flows.map((flow, k) => Math.abs(flow - (solved[i]?.flows[k] ?? Number.NaN)));
    });
    expect(Math.max(...gaps)).toBeLessThan(0.0001);
  });
});

// The curve h = 30 - Q²/900 with points close together around the answer.
const parabola = [0, 60, 120, 129.5, 129.8, 130, 131, 150];
const manifoldA: PipeNetwork = {
  roughness: 150,
  pump: { curve: parabola.map((flow) => [flow, 30 - flow ** 2 / 900]), speed: 1 },
  main: { length: 40, bore: 3.042, loss: 3 },
  branches: [
    { length: 25, bore: 2.049, loss: 2.5, height: 8 },
    { length: 18, bore: 2.049, loss: 2.5, height: 6 },
    { length: 12, bore: 1.592, loss: 2.5, height: 4 },
  ],
};

// Answers: computed once with EPANET 2.3 and once by hand-written equations, equal to 5 figures.
test("a pump and three outlets, by the average inside diameter", () => {
  const { total, manifoldHead, pumpHead, flows } = solveWithSheets(manifoldA);
  expect(total).toBeCloseTo(129.804, 2);
  expect(manifoldHead).toBeCloseTo(8.3293, 2);
  expect(pumpHead).toBeCloseTo(11.2788, 2);
  expect(flows[0]).toBeCloseTo(19.748, 2);
  expect(flows[1]).toBeCloseTo(59.437, 2);
  expect(flows[2]).toBeCloseTo(50.618, 2);
});

describe("a line that is shut", () => {
  // every fourth network with two lines or more: its first line shut, whatever its height and bore
  const shut = networks.filter(({ branches }, i) => i % 4 === 0 && branches.length > 1);

  test.each([
    ["since no flow is wanted", { override_flow: 0, override_valve_setting: null }],
    ["by choice", { override_valve_setting: 90 }],
  ])("%s carries nothing, and the others run as EPANET has them without it", (_, first) => {
    expect(shut.length).toBeGreaterThan(20);
    for (const network of shut) {
      const answers = sheetsAnswers(network, { fast: true, first });
      const without = solveWithEpanet({ ...network, branches: network.branches.slice(1) });
      const flow = (row: number) => answers.number("pipe_lines.actual_flow", row);
      expect(flow(1)).toBe(0);
      for (const [i, expected] of without.flows.entries()) {
        expect(Math.abs(flow(i + 2) - expected)).toBeLessThan(Math.max(0.01, 0.001 * expected));
      }
    }
  });
});
