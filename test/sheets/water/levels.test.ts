import { describe, expect, test } from "vitest";
import type { RowValues } from "../../../engine/job/record.js";
import { answersOf } from "../../support/water.js";
import { yardPumps } from "../../support/water-jobs.js";

/** Three steps that want 40, 80 and 60 gal/min: lips of 2, 4 and 3 ft at 100 gal/h for each inch. */
const falls = [2, 4, 3].map((width, i) => ({
  name: `fall ${i + 1}`,
  level: i + 1,
  width,
  drop: 2,
}));
const at = (outlet_level: number, flow?: number): RowValues => ({
  outlet_level,
  pipe_size: "2 in",
  ...(flow === undefined ? {} : { override_flow: flow }),
});

function wanted(pipe_lines: RowValues[]): number[] {
  const answers = answersOf({ falls, pipe_lines, pump_choice: "V" }, yardPumps, { fast: true });
  return pipe_lines.map((_, i) => answers.number("pipe_lines.design_flow", i + 1));
}

describe("outlets bring what their step and those below, down to the next outlet, lack", () => {
  test.each([
    ["one at the top brings the most that any step wants", [at(1)], [80]],
    ["a second one brings the difference", [at(1), at(2)], [40, 40]],
    ["a third step that wants less needs none", [at(1), at(2), at(3)], [40, 40, 0]],
    ["two at one step share", [at(1), at(1)], [40, 40]],
    ["a flow chosen leaves the rest to the other", [at(1, 30), at(1)], [30, 50]],
    ["a flow chosen above counts below", [at(1, 70), at(2)], [70, 10]],
    ["a flow chosen above that is enough leaves nothing", [at(1, 95), at(2)], [95, 0]],
    ["a flow chosen stands, enough or not", [at(1, 10)], [10]],
    ["an outlet below the last lip's step brings nothing", [at(1), at(9)], [80, 0]],
  ])("%s", (_, pipe_lines, flows) => {
    for (const [i, flow] of wanted(pipe_lines).entries())
      expect(flow).toBeCloseTo(flows[i] ?? 0, 9);
  });
});

test("a step stands at the drops and falls below it; lips side by side count once", () => {
  const answers = answersOf(
    {
      falls: [...falls, { name: "beside", level: 2, width: 1, drop: 1.5 }],
      runs: [
        { name: "a", after_level: 1, length: 10, fall: 0.5 },
        { name: "b", after_level: 3, length: 10, fall: 0.25 },
      ],
      pipe_lines: [{ outlet_level: 1, pipe_size: "2 in", above_water: 0.5 }, at(3)],
      pump_choice: "V",
    },
    yardPumps,
    { fast: true },
  );
  expect(answers.number("levels.height", 1)).toBeCloseTo(6.75, 9);
  expect(answers.number("levels.height", 2)).toBeCloseTo(4.25, 9);
  expect(answers.number("levels.height", 3)).toBeCloseTo(2.25, 9);
  expect(answers.number("pipe_lines.height", 1)).toBeCloseTo(7.25, 9);
  expect(answers.number("pipe_lines.height", 2)).toBeCloseTo(2.25, 9);
  expect(answers.number("total_drop")).toBeCloseTo(6.75, 9);
});

test("lips of a step share by what they want, or as chosen", () => {
  const shares = (chosen: (number | undefined)[]) => {
    const answers = answersOf(
      {
        falls: [2, 1, 1].map((width, i) => ({
          ...{ name: `lip ${i + 1}`, level: 1, width, drop: 1 },
          ...(chosen[i] === undefined ? {} : { override_share: chosen[i] }),
        })),
        pipe_lines: [at(1)],
        pump_choice: "V",
      },
      yardPumps,
      { fast: true },
    );
    return [1, 2, 3].map((row) => answers.number("falls.share", row));
  };
  expect(shares([])).toEqual([0.5, 0.25, 0.25]);
  expect(shares([0.7])).toEqual([0.7, expect.closeTo(0.15, 9), expect.closeTo(0.15, 9)]);
  expect(shares([0.2, 0.5, 0.3])).toEqual([0.2, 0.5, 0.3]);
});
