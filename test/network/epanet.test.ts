import { describe, expect, test } from "vitest";
import { type PipeNetwork, solveWithEpanet } from "./epanet.js";
import { headLoss, pumpHead, solveByHalving, velocityHeadFactor } from "./exact.js";
import { randomNetworks } from "./generate.js";

/** Worst gaps between the two solvers, in gal/min and ft; a flow may also be within 0.1 %. */
function gaps(network: PipeNetwork): { flow: number; head: number } {
  const epanet = solveWithEpanet(network);
  const halving = solveByHalving(network);
  const flows = halving.flows.map((flow, i) => {
    const gap = Math.abs(flow - (epanet.flows[i] ?? Number.NaN));
    return gap < flow * 0.001 ? 0 : gap;
  });
  return {
    flow: Math.max(...flows, Math.abs(halving.total - epanet.total)),
    head: Math.max(
      Math.abs(halving.manifoldHead - epanet.manifoldHead),
      Math.abs(halving.pumpHead - epanet.pumpHead),
    ),
  };
}

function expectAgreement(network: PipeNetwork): void {
  const { flow, head } = gaps(network);
  expect(flow).toBeLessThan(0.01);
  expect(head).toBeLessThan(0.01);
}

describe("EPANET and plain halving agree", () => {
  test("on 208 random networks, 13 of each kind", () => {
    const networks = randomNetworks(20250101, 208);
    const worst = networks.map(gaps);
    expect(Math.max(...worst.map(({ flow }) => flow))).toBeLessThan(0.01);
    expect(Math.max(...worst.map(({ head }) => head))).toBeLessThan(0.01);
  });

  test("the random networks hold what they promise, and repeat", () => {
    const networks = randomNetworks(20250101, 208);
    const solutions = networks.map(solveByHalving);
    const dry = (flows: number[]) => flows.filter((flow) => flow === 0).length;
    expect(new Set(networks.map(({ branches }) => branches.length)).size).toBe(8);
    expect(solutions.filter(({ total }) => total === 0).length).toBeGreaterThanOrEqual(13);
    expect(
      solutions.filter(({ total, flows }) => total > 0 && dry(flows) > 0).length,
    ).toBeGreaterThan(26);
    expect(solutions.filter(({ flows }) => dry(flows) === 0).length).toBeGreaterThan(52);
    expect(randomNetworks(20250101, 208)).toEqual(networks);
    expect(randomNetworks(2, 208)).not.toEqual(networks);
  });
});

// The curve h = 30 - Q²/900 as short lines around the answer, where they leave it by under 1e-5 ft.
const parabola = [0, 60, 120, 129, 129.5, 129.7, 129.8, 129.9, 130, 131, 150];
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
describe.each([
  ["EPANET", solveWithEpanet],
  ["halving", solveByHalving],
])("a pump and three outlets, by %s", (_, solve) => {
  test("gives the known flows and heads", () => {
    const { total, manifoldHead, pumpHead, flows } = solve(manifoldA);
    expect(Math.abs(total - 129.804)).toBeLessThan(0.005);
    expect(manifoldHead).toBeCloseTo(8.3293, 3);
    expect(pumpHead).toBeCloseTo(11.2788, 3);
    for (const [i, flow] of [19.748, 59.437, 50.618].entries()) {
      expect(Math.abs((flows[i] ?? 0) - flow)).toBeLessThan(0.005);
    }
  });

  test("runs the highest outlet dry when it stands above the manifold's head", () => {
    const [a, ...others] = manifoldA.branches;
    const raised = { ...manifoldA, branches: [{ ...a, height: 20 }, ...others] } as PipeNetwork;
    const { manifoldHead, flows } = solve(raised);
    expect(flows[0]).toBe(0);
    expect(manifoldHead).toBeLessThan(20);
    expect(flows[1]).toBeGreaterThan(40);
    const without = solve({ ...manifoldA, branches: others });
    expect(without.flows[0]).toBeCloseTo(flows[1] ?? 0, 2);
  });

  test("leaves the manifold at the shut-off head when all outlets are too high", () => {
    const branches = manifoldA.branches.map((branch) => ({ ...branch, height: 35 }));
    const { total, manifoldHead, flows } = solve({ ...manifoldA, branches });
    expect({ total, flows }).toEqual({ total: 0, flows: [0, 0, 0] });
    expect(manifoldHead).toBeCloseTo(30, 2);
  });

  test("splits evenly between equal outlets", () => {
    const outlet = { length: 18, bore: 2.049, loss: 2.5, height: 6 };
    const { total, flows } = solve({ ...manifoldA, branches: Array(8).fill(outlet) });
    for (const flow of flows) expect(flow).toBeCloseTo(total / 8, 4);
  });

  test("lets a trickle through a nearly closed valve", () => {
    const [a, b, c] = manifoldA.branches;
    const nearlyClosed = { ...b, loss: 1e5 };
    const network = { ...manifoldA, branches: [a, nearlyClosed, c] } as PipeNetwork;
    const { manifoldHead, flows } = solve(network);
    // With K this large, friction is nothing: h = 8/(g π²) K q² / d⁴.
    const cubicFeet = Math.sqrt(
      ((manifoldHead - 6) / velocityHeadFactor / 1e5) * (2.049 / 12) ** 4,
    );
    expect(flows[1]).toBeCloseTo(cubicFeet * 448.831, 2);
  });

  test("at part speed obeys the affinity laws", () => {
    const network = { ...manifoldA, pump: { ...manifoldA.pump, speed: 0.8 } };
    const { total, pumpHead: head } = solve(network);
    expect(head).toBeCloseTo(pumpHead(manifoldA.pump, total / 0.8) * 0.64, 2);
  });
});

describe("what leaves the pump arrives", () => {
  test.each(randomNetworks(7, 16))("network %#", (network) => {
    const { total, manifoldHead, pumpHead: head, flows } = solveWithEpanet(network);
    expect(head).toBeCloseTo(pumpHead(network.pump, total), 1);
    expect(head - manifoldHead).toBeCloseTo(headLoss(network.main, network.roughness, total), 2);
    for (const [i, branch] of network.branches.entries()) {
      const flow = flows[i] ?? 0;
      if (flow === 0) expect(manifoldHead).toBeLessThan(branch.height + 0.01);
      else {
        const lost = headLoss(branch, network.roughness, flow);
        expect(manifoldHead - branch.height).toBeCloseTo(lost, 3);
      }
    }
  });
});

test("a pump curve that starts past zero flow is carried back along its first line", () => {
  const [network] = randomNetworks(3, 1) as [PipeNetwork];
  const shutOff = network.pump.curve[0]?.[1] ?? 0;
  const late: [number, number][] = [
    [20, shutOff - 1],
    [60, shutOff - 3],
    [500, 0.5],
  ];
  const early: [number, number][] = [[0, shutOff], ...late];
  const tall = network.branches.map((branch) => ({ ...branch, loss: 1e5 }));
  const withCurve = (curve: [number, number][]) => ({
    ...network,
    branches: tall,
    pump: { curve, speed: 1 },
  });
  expectAgreement(withCurve(late));
  expect(solveByHalving(withCurve(late)).total).toBeCloseTo(
    solveByHalving(withCurve(early)).total,
    9,
  );
});

test("a duty point past the last point follows the last line, as EPANET has it", () => {
  const short: PipeNetwork = {
    ...manifoldA,
    pump: {
      curve: [
        [0, 30],
        [60, 26],
        [80, 23],
      ],
      speed: 1,
    },
  };
  expect(solveByHalving(short).total).toBeGreaterThan(80);
  expectAgreement(short);
});
