import { velocityHeadFactor } from "./exact.js";
import { curveFromZero, type NetworkSolution, type PipeNetwork } from "./pipe-network.js";
import { runEpanet } from "./run-epanet.js";

export type { NetworkSolution, PipeNetwork } from "./pipe-network.js";

/**
 * Solves the network with the US EPA's EPANET engine, Hazen-Williams, US units.
 * With every outlet too high the flows are zero and the manifold stands at the shut-off head.
 * Throws where EPANET does not accept the data or does not settle.
 */
export function solveWithEpanet(network: PipeNetwork): NetworkSolution {
  return runEpanet(epanetInput(network), (results) => {
    const flows = network.branches.map((_, i) => results.flow(`branch${i}`));
    return {
      total: flows.reduce((sum, flow) => sum + flow, 0),
      manifoldHead: results.head("manifold"),
      pumpHead: results.head("discharge"),
      flows,
    };
  });
}

/**
 * Gallons a minute drawn at the manifold besides the outlets. EPANET lets a closed pipe seep
 * (head difference in ft / 1e8 cfs); with every outlet shut that seepage would run back through the
 * pump, and EPANET would close the pump. This draw outweighs it: 8 outlets 75 ft too high seep 0.0027.
 */
const bleed = 0.003;

/** EPANET rounds 8/(g π²) to 0.02517, 0.09 % low: each K is raised so that its head is v²/2g times K. */
const wholeVelocityHead = velocityHeadFactor / 0.02517;

/** The network as an EPANET input text: check-valve pipes, so that no outlet ever draws air back. */
export function epanetInput({ roughness, pump, main, branches }: PipeNetwork): string {
  // EPANET refuses a pipe without length.
  const pipe = (length: number) => Math.max(length, 1e-6);
  return [
    "[JUNCTIONS]",
    "discharge 0 0",
    `manifold 0 ${bleed}`,
    "[RESERVOIRS]",
    "basin 0",
    ...branches.map(({ height }, i) => `outlet${i} ${height}`),
    "[PIPES]",
    `main discharge manifold ${pipe(main.length)} ${main.bore} ${roughness} ${main.loss * wholeVelocityHead} OPEN`,
    ...branches.map(
      ({ length, bore, loss }, i) =>
        `branch${i} manifold outlet${i} ${pipe(length)} ${bore} ${roughness} ${loss * wholeVelocityHead} CV`,
    ),
    "[PUMPS]",
    `pump basin discharge HEAD curve SPEED ${pump.speed}`,
    "[CURVES]",
    ...pointsAsLines(extendedToZeroHead(pump.curve)).map(([flow, head]) => `curve ${flow} ${head}`),
    "[TIMES]",
    "DURATION 0",
    "[OPTIONS]",
    "UNITS GPM",
    "HEADLOSS H-W",
    "QUALITY NONE",
    "TRIALS 1000",
    "ACCURACY 1e-8",
    "HEADERROR 1e-7",
    "FLOWCHANGE 1e-6",
    // A check valve keeps its state within these tolerances (ft, cfs). The defaults, 0.0005 ft and
    // 0.0001 cfs, could hold a wide outlet shut that should run at several gallons a minute.
    "HTOL 1e-9",
    "QTOL 1e-9",
    // Undamped, one network in two thousand swings between two states of its check valves for ever.
    "DAMPLIMIT 1",
    "UNBALANCED STOP",
    "[END]",
  ].join("\n");
}

/** EPANET continues the last line by itself, but warns on each run that is past the last point. */
function extendedToZeroHead(curve: PipeNetwork["pump"]["curve"]): PipeNetwork["pump"]["curve"] {
  const points = curveFromZero(curve);
  const [before, last] = points.slice(-2);
  if (!before || !last || last[1] <= 0) return points;
  const slope = (last[1] - before[1]) / (last[0] - before[0]);
  return [...points, [last[0] - last[1] / slope, 0]];
}

/**
 * EPANET fits a power curve through exactly three points that start at zero flow, and joins four or
 * more by straight lines: so a middle point is added where there are three.
 */
function pointsAsLines(points: PipeNetwork["pump"]["curve"]): PipeNetwork["pump"]["curve"] {
  const [first, second, ...rest] = points;
  if (!first || !second || points.length !== 3) return points;
  return [first, [(first[0] + second[0]) / 2, (first[1] + second[1]) / 2], second, ...rest];
}
