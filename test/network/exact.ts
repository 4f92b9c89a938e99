import {
  curveFromZero,
  type NetworkSolution,
  type Pipe,
  type PipeNetwork,
  type Pump,
} from "./pipe-network.js";

/** Head of a speed by flow and bore, v²/2g = 8 q²/(g π² d⁴): ft, ft³/s; g 32.174 ft/s². */
export const velocityHeadFactor = 8 / (32.174 * Math.PI ** 2);

const gallonsPerMinutePerCubicFootPerSecond = (1728 / 231) * 60;

/**
 * Solves the network by halving, without any outside code: a trial total flow leaves some head at
 * the manifold, each branch takes a flow at that head, and the trial moves towards their sum.
 */
export function solveByHalving(network: PipeNetwork): NetworkSolution {
  const { pump, main, branches, roughness } = network;
  const manifoldHead = (total: number) => pumpHead(pump, total) - headLoss(main, roughness, total);
  const flowsAt = (head: number) =>
    branches.map((branch) => flowAtHead(branch, roughness, head - branch.height));
  const surplus = (total: number) => sum(flowsAt(manifoldHead(total))) - total;
  const total = fallingRoot(surplus);
  const head = manifoldHead(total);
  return { total, manifoldHead: head, pumpHead: pumpHead(pump, total), flows: flowsAt(head) };
}

/** Head (ft) at a flow (gal/min), straight lines between the points, affinity laws for speed. */
export function pumpHead({ curve, speed }: Pump, flow: number): number {
  const points = curveFromZero(curve);
  const fullSpeedFlow = flow / speed;
  let segment = 1;
  while (segment < points.length - 1 && (points[segment]?.[0] ?? 0) < fullSpeedFlow) segment += 1;
  const [fromFlow, fromHead] = points[segment - 1] ?? [0, 0];
  const [toFlow, toHead] = points[segment] ?? [0, 0];
  const slope = (toHead - fromHead) / (toFlow - fromFlow);
  return (fromHead + slope * (fullSpeedFlow - fromFlow)) * speed * speed;
}

/** Friction and local loss (ft) at a flow (gal/min). Friction: EPANET 2.2 User Manual. */
export function headLoss({ length, bore, loss }: Pipe, roughness: number, flow: number): number {
  const cubicFeet = flow / gallonsPerMinutePerCubicFootPerSecond;
  const feet = bore / 12;
  const friction = (4.727 * length * cubicFeet ** 1.852) / (roughness ** 1.852 * feet ** 4.871);
  const local = (velocityHeadFactor * loss * cubicFeet ** 2) / feet ** 4;
  return friction + local;
}

function flowAtHead(pipe: Pipe, roughness: number, head: number): number {
  return head <= 0 ? 0 : fallingRoot((flow) => head - headLoss(pipe, roughness, flow));
}

/** Zero of a falling function of a flow from 0 up; 0 where it starts at or below zero. */
function fallingRoot(value: (flow: number) => number): number {
  if (value(0) <= 0) return 0;
  let low = 0;
  let high = 1;
  while (value(high) > 0) {
    low = high;
    high *= 2;
  }
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return low;
    if (value(middle) > 0) low = middle;
    else high = middle;
  }
}

function sum(numbers: number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
