import type { Branch, PipeNetwork, Pump } from "./pipe-network.js";
import { type Random, seededRandom } from "./random.js";

// Schedule 40, 1 to 4 in: outside diameter less twice the least wall, ASTM D1785.
const bores = [1.049, 1.38, 1.61, 2.067, 2.469, 3.068, 4.026];

/** Kinds of networks, in turn: half of them plain, then each edge that a solver could trip on. */
const kinds: ((random: Random) => PipeNetwork)[] = [
  plain,
  (random) => withBranches(random, (branch) => ({ ...branch, height: 4 })),
  plain,
  (random) => ({ ...plain(random), branches: [anyBranch(random)] }),
  plain,
  (random) => withBranches(random, (branch, i) => (i === 0 ? branch : { ...branch, loss: 1e5 })),
  plain,
  barelyReaching,
  plain,
  (random) => withBranches(random, (branch, i) => (i % 2 ? { ...branch, height: 70 } : branch)),
  plain,
  (random) => withBranches(random, (branch) => ({ ...branch, height: branch.height + 61 })),
  plain,
  (random) => withBranches(random, (branch) => ({ ...branch, length: 0 })),
  plain,
  (random) => withBranches(random, (branch) => ({ ...branch, bore: 4.026, loss: 0.5 })),
];

/**
 * Networks of waterfall size, the same for the same seed: 1 to 8 outlets, open and part-closed
 * valves, and in turn equal heights, one outlet, all but one nearly closed, a pump that barely
 * reaches, some outlets too high, all too high, branches without length, and wide short branches.
 */
export function randomNetworks(seed: number, count: number): PipeNetwork[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => (kinds[i % kinds.length] ?? plain)(random));
}

function plain(random: Random): PipeNetwork {
  const branches = Array.from({ length: random.whole(1, 8) }, () => anyBranch(random));
  return {
    roughness: random.pick([130, 140, 150]),
    pump: anyPump(random),
    main: {
      length: random.between(5, 200),
      bore: random.pick(bores.slice(2)),
      loss: random.between(0.5, 30),
    },
    branches,
  };
}

function anyBranch(random: Random): Branch {
  const partClosed = random.between(0, 1) < 0.25;
  return {
    length: random.between(1, 60),
    bore: random.pick(bores),
    loss: partClosed ? 30 * random.between(1, 8.16) ** 2 : random.between(0.5, 30),
    height: random.between(0, 15),
  };
}

/** 5 to 8 points; each line falls faster or slower than the one before, as tested pumps' do. */
function anyPump(random: Random): Pump {
  const lines = random.whole(4, 7);
  const flowSteps = Array.from({ length: lines }, () => random.between(0.5, 1.5));
  const drops = flowSteps.map((step, i) => step * (i + random.between(0.2, 1.5)));
  const widest = random.between(20, 250) / sum(flowSteps);
  const shutOff = random.between(10, 60);
  const fall = (shutOff * random.between(0.6, 0.95)) / sum(drops);
  const curve: Pump["curve"] = [[0, shutOff]];
  for (const [i, step] of flowSteps.entries()) {
    const [flow, head] = curve[i] ?? [0, 0];
    curve.push([flow + step * widest, head - (drops[i] ?? 0) * fall]);
  }
  return { curve, speed: random.between(0.5, 1) };
}

function withBranches(
  random: Random,
  change: (branch: Branch, index: number) => Branch,
): PipeNetwork {
  const network = plain(random);
  return { ...network, branches: network.branches.map(change) };
}

/** The lowest outlet a hair to a foot below the shut-off head, the others above it. */
function barelyReaching(random: Random): PipeNetwork {
  const network = plain(random);
  const { curve, speed } = network.pump;
  const shutOff = (curve[0]?.[1] ?? 0) * speed * speed;
  const margin = 10 ** random.between(-6, 0);
  const raise = shutOff - margin - Math.min(...network.branches.map(({ height }) => height));
  const branches = network.branches.map((branch) => ({ ...branch, height: branch.height + raise }));
  return { ...network, branches };
}

function sum(numbers: number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
