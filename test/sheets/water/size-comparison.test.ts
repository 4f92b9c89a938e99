import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CellError } from "../../../engine/formula/value.js";
import { type Answers, answersOf, waterModel } from "../../support/water.js";
import { pump } from "../../support/water-jobs.js";

/** Any value that the input allows, its limits often. */
function allowed(id: string) {
  const declaration = waterModel().byId.get(id)?.declaration;
  if (declaration?.kind !== "input") throw new Error(`${id} is no input`);
  const { least = 0, most = 1, whole } = declaration;
  const inside = whole
    ? fc.integer({ min: least, max: most })
    : fc.double({ min: least, max: most, noNaN: true });
  return fc.oneof(fc.constant(least), fc.constant(most), inside);
}

const main = fc.record({
  main_length: allowed("main_length"),
  flexible_length: allowed("flexible_length"),
  main_elbows_90: allowed("main_elbows_90"),
  main_elbows_45: allowed("main_elbows_45"),
  main_tees: allowed("main_tees"),
  main_valves: allowed("main_valves"),
  main_other_fitting_loss: allowed("main_other_fitting_loss"),
  inlet_fitting: fc.constantFrom("bulkhead fitting, flush", "at the pump's own outlet"),
  check_valve_fitted: fc.boolean(),
  smoothness: allowed("smoothness"),
  rim_above_water: allowed("rim_above_water"),
});

const fall = fc.record({
  level: fc.constant(1),
  width: allowed("falls.width[1]"),
  drop: allowed("falls.drop[1]"),
});

const outlet = fc.record({
  outlet_level: fc.constant(1),
  pipe_size: fc.constantFrom("1 in", "2 in", "6 in"),
  length: allowed("pipe_lines.length[1]"),
  other_fitting_loss: allowed("pipe_lines.other_fitting_loss[1]"),
  measured_height: fc.oneof(fc.constant(null), allowed("pipe_lines.measured_height[1]")),
  override_flow: fc.oneof(fc.constant(null), allowed("pipe_lines.override_flow[1]")),
});

/** Heads of a pump at 0, 40, 80 and 120 gal/min: falling, flat or rising. */
const heads = fc.array(fc.double({ min: 0.1, max: 120, noNaN: true }), {
  minLength: 4,
  maxLength: 4,
});

const errorsIn = ({ model, values }: Answers) =>
  model.cells
    .filter(
      ({ name, index }) => /^size_comparison\./.test(name) && values[index] instanceof CellError,
    )
    .map(({ id }) => id);

const solve = (inputs: object, heights: readonly number[]) =>
  answersOf(
    { pump_choice: "P", ...inputs },
    [
      pump(
        "P",
        heights.map((head, i) => [40 * i, head]),
      ),
    ],
    {
      fast: true,
    },
  );

describe("sizes compared", () => {
  test("a K below 0 on a short main is no error", () => {
    const answers = solve(
      {
        falls: [{ name: "Fall", level: 1, width: 3, drop: 2 }],
        pipe_lines: [{ name: "One", outlet_level: 1, pipe_size: "2 in" }],
        main_length: 0,
        flexible_length: 0,
        main_other_fitting_loss: -5,
      },
      [20, 16, 8, 1],
    );
    expect(errorsIn(answers)).toEqual([]);
    expect(answers.number("size_comparison.most_flow", 6)).toBeGreaterThan(0);
  });

  test("no input that is allowed shows an error, and no figure is below zero", () => {
    fc.assert(
      fc.property(main, fall, outlet, heads, (pipe, one, branch, heights) => {
        const answers = solve({ ...pipe, falls: [one], pipe_lines: [branch] }, heights);
        expect(errorsIn(answers)).toEqual([]);
        for (const row of [1, 4, 8]) {
          for (const column of ["head_lost", "most_flow", "most_speed"]) {
            expect(answers.number(`size_comparison.${column}`, row)).toBeGreaterThanOrEqual(0);
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});
