import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Answers, asked } from "../../support/water.js";
import { yardPumps } from "../../support/water-jobs.js";

const sizes = ["1 in", "1-1/4 in", "1-1/2 in", "2 in", "2-1/2 in", "3 in", "4 in"];
const between = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true, noDefaultInfinity: true });

const outlet = fc.record({
  outlet_level: fc.constantFrom(1, 2, 3),
  pipe_size: fc.constantFrom(...sizes),
  length: between(0, 80),
  elbows_90: fc.integer({ min: 0, max: 6 }),
  measured_height: between(0, 25),
  override_valve_setting: between(0, 90),
});

const network = fc.record({
  pipe_lines: fc.array(outlet, { minLength: 1, maxLength: 8 }),
  main_size: fc.constantFrom("2 in", "3 in", "4 in"),
  main_length: between(1, 200),
  override_speed: between(0.3, 0.99),
});
type Network = typeof network extends fc.Arbitrary<infer T> ? T : never;

const falls = [1, 2, 3].map((step) => ({ name: `fall ${step}`, level: step, width: 2, drop: 1 }));

const outlets = Array.from({ length: 8 }, (_, i) => `pipe_lines.actual_flow[${i + 1}]`);
const steps = [1, 2, 3].flatMap((step) => [
  `levels.actual_flow[${step}]`,
  `falls.actual_flow[${step}]`,
]);
const flowNames = ["total_flow", ...outlets];

function solve(given: Network, names: readonly string[] = flowNames): Answers {
  return asked(names, { falls, pump_choice: "V", ...given }, yardPumps);
}

const flowsOf = (answers: Answers, { pipe_lines }: Network) =>
  pipe_lines.map((_, i) => answers.number("pipe_lines.actual_flow", i + 1));

function changed(
  given: Network,
  at: number,
  change: Partial<Network["pipe_lines"][number]>,
): Network {
  const pipe_lines = given.pipe_lines.map((one, i) => (i === at ? { ...one, ...change } : one));
  return { ...given, pipe_lines };
}

/** What the solver leaves open, in gal/min. */
const slack = 0.0005;

describe("any network", () => {
  test("gives more with more speed", () => {
    fc.assert(
      fc.property(network, (given) => {
        const slow = solve(given).number("total_flow");
        const fast = solve({ ...given, override_speed: given.override_speed + 0.01 });
        expect(fast.number("total_flow")).toBeGreaterThanOrEqual(slow - slack);
      }),
      { numRuns: 60 },
    );
  });

  test.each([
    [
      "higher",
      (one: Network["pipe_lines"][number]) => ({ measured_height: one.measured_height + 1 }),
    ],
    ["longer", (one: Network["pipe_lines"][number]) => ({ length: one.length + 10 })],
    [
      "throttled",
      (one: Network["pipe_lines"][number]) => ({
        override_valve_setting: Math.min(90, one.override_valve_setting + 5),
      }),
    ],
  ])("an outlet that is %s gets no more, the others no less", (_, change) => {
    fc.assert(
      fc.property(network, fc.nat(7), (given, pick) => {
        const at = pick % given.pipe_lines.length;
        const before = flowsOf(solve(given), given);
        const next = changed(
          given,
          at,
          change(given.pipe_lines[at] as Network["pipe_lines"][number]),
        );
        const after = flowsOf(solve(next), next);
        for (const [i, flow] of after.entries()) {
          if (i === at) expect(flow).toBeLessThanOrEqual((before[i] ?? 0) + slack);
          else expect(flow).toBeGreaterThanOrEqual((before[i] ?? 0) - slack);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("loses no water: at the manifold, over every step, between lips", () => {
    fc.assert(
      fc.property(network, (given) => {
        const answers = solve(given, [...flowNames, ...steps]);
        const flows = flowsOf(answers, given);
        const total = flows.reduce((sum, flow) => sum + flow, 0);
        expect(Math.abs(answers.number("total_flow") - total)).toBeLessThan(1e-9);
        for (const step of [1, 2, 3]) {
          const entered = given.pipe_lines.reduce(
            (sum, { outlet_level }, i) => sum + (outlet_level <= step ? (flows[i] ?? 0) : 0),
            0,
          );
          expect(Math.abs(answers.number("levels.actual_flow", step) - entered)).toBeLessThan(1e-9);
          expect(Math.abs(answers.number("falls.actual_flow", step) - entered)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("settles", () => {
    fc.assert(
      fc.property(network, (given) => {
        const answers = solve(given, ["actual_converged", "open_converged"]);
        expect(answers.yes("actual_converged")).toBe(true);
        expect(answers.yes("open_converged")).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});

test("whatever is wanted of a pump that reaches, the outlets get it within 0.5 %", () => {
  const one = fc.record({
    outlet_level: fc.constantFrom(1, 2, 3),
    pipe_size: fc.constantFrom("1-1/2 in", "2 in", "3 in"),
    length: between(0, 60),
    measured_height: between(0, 8),
    override_flow: between(4, 30),
  });
  let reached = 0;
  fc.assert(
    fc.property(
      fc.array(one, { minLength: 1, maxLength: 8 }),
      fc.constantFrom("V", "F"),
      (pipe_lines, pump_choice) => {
        const job = { falls, pipe_lines, main_size: "3 in", main_length: 40, pump_choice };
        const answers = asked(["pump_strong_enough", ...outlets], job, yardPumps);
        if (!answers.yes("pump_strong_enough")) return;
        reached += 1;
        for (const [i, { override_flow }] of pipe_lines.entries()) {
          const flow = answers.number("pipe_lines.actual_flow", i + 1);
          expect(Math.abs(flow / override_flow - 1)).toBeLessThan(0.005);
        }
      },
    ),
    { numRuns: 150, seed: 20260301 },
  );
  expect(reached).toBeGreaterThan(40);
});

test("valve: the opening for a loss and the loss of an opening undo one another", () => {
  fc.assert(
    fc.property(between(0, 81.9), (angle) => {
      const one = { outlet_level: 1, pipe_size: "2 in", length: 10, measured_height: 1 };
      const alone = (line: object, names: readonly string[]) =>
        asked(names, { falls, pipe_lines: [{ ...one, ...line }], pump_choice: "F" }, yardPumps);
      const set = alone({ override_valve_setting: angle }, ["total_flow"]);
      const flow = set.number("total_flow");
      const settings = alone({ override_flow: flow }, ["pipe_lines.valve_setting[1]"]);
      expect(Math.abs(settings.number("pipe_lines.valve_setting", 1) - angle)).toBeLessThan(0.01);
    }),
    { numRuns: 60 },
  );
});
