import type { RowValues } from "../../engine/job/record.js";
import type { BookRow } from "../../engine/template/book-layout.js";
import { type Answers, answersOf } from "../support/water.js";
import { curveFromZero, type NetworkSolution, type PipeNetwork } from "./pipe-network.js";

const sizes: readonly [string, number][] = [
  ["1 in", 1.049],
  ["1-1/4 in", 1.38],
  ["1-1/2 in", 1.61],
  ["2 in", 2.067],
  ["2-1/2 in", 2.469],
  ["3 in", 3.068],
  ["4 in", 4.026],
  ["6 in", 6.065],
];

const averages = [1.033, 1.364, 1.592, 2.049, 2.445, 3.042, 3.998, 6.031];

function sizeOf(bore: number): string {
  const at = sizes.findIndex(([, known], i) => known === bore || averages[i] === bore);
  const found = sizes[at];
  if (found === undefined) throw new Error(`No pipe size has a bore of ${bore} in`);
  return found[0];
}

/** The pump as a row of the office book, in gallons an hour. */
export function pumpRow({ pump }: PipeNetwork): BookRow {
  const points = curveFromZero(pump.curve).flatMap(([flow, head], i) => [
    [`flow_${i + 1}`, flow * 60],
    [`head_${i + 1}`, head],
  ]);
  return { code: "X", cost: 1, variable_speed: true, ...Object.fromEntries(points) };
}

/**
 * The sheets' answers for a network: no fittings, one odd fitting with the rest of each K.
 * `first` changes the row of the first line.
 */
export function sheetsAnswers(
  network: PipeNetwork,
  options: { fast?: boolean; first?: RowValues } = { fast: true },
): Answers {
  const { main, branches, roughness, pump } = network;
  const average = averages.includes(main.bore);
  const plain = branches.map(({ length, bore, height }, i) => ({
    name: `outlet ${i + 1}`,
    outlet_level: 1,
    pipe_size: sizeOf(bore),
    length,
    tee: "no tee",
    elbows_90: 0,
    measured_height: height,
    override_flow: 1,
    override_valve_setting: 0,
  }));
  const inputs = {
    falls: [{ name: "fall", level: 1, width: 1, drop: 1 }],
    main_size: sizeOf(main.bore),
    main_length: main.length,
    flexible_length: 0,
    main_elbows_90: 0,
    main_valves: 0,
    inlet_fitting: "at the pump's own outlet",
    main_other_fitting_loss: main.loss,
    smoothness: roughness,
    bore_basis: average ? "average inside diameter" : "outside less two least walls",
    pump_choice: "X",
    override_speed: pump.speed,
  };
  const pumps = [pumpRow(network)];
  // The sheets add the step in bore, the open valve and the exit; what is left is given as odd fittings.
  const bare = answersOf({ ...inputs, pipe_lines: plain }, pumps, { fast: true });
  const pipe_lines = plain.map((outlet, i) => {
    const part = (name: string) => bare.number(`pipe_lines.${name}`, i + 1);
    const own = part("loss_reducer") + part("factor") * 3 + 1;
    const changed = i === 0 ? options.first : undefined;
    return { ...outlet, other_fitting_loss: (branches[i]?.loss ?? 0) - own, ...changed };
  });
  return answersOf({ ...inputs, pipe_lines }, pumps, options);
}

/** What the sheets say the network does, as set. */
export function solveWithSheets(network: PipeNetwork): NetworkSolution {
  const answers = sheetsAnswers(network);
  return {
    total: answers.number("total_flow"),
    manifoldHead: answers.number("manifold_head"),
    pumpHead: answers.number("pump_head"),
    flows: network.branches.map((_, i) => answers.number("pipe_lines.actual_flow", i + 1)),
  };
}
