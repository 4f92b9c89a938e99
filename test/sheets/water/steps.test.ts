import { describe, expect, test } from "vitest";
import type { RowValues } from "../../../engine/job/record.js";
import { answersOf } from "../../support/water.js";
import { yardPumps } from "../../support/water-jobs.js";

/** Three steps that want 40, 80 and 60 gal/min: lips of 2, 4 and 3 ft at 100 gal/h for each inch. */
const falls = [2, 4, 3].map((width, i) => ({ name: `fall ${i + 1}`, step: i + 1, width, drop: 2 }));
const at = (enters: number, flow?: number): RowValues => ({
  enters,
  pipe_size: "2 in",
  ...(flow === undefined ? {} : { flow_chosen: flow }),
});

function wanted(outlets: RowValues[]): number[] {
  const answers = answersOf({ falls, outlets, pump_choice: "V" }, yardPumps, { fast: true });
  return outlets.map((_, i) => answers.number("outlets.flow_wanted", i + 1));
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
  ])("%s", (_, outlets, flows) => {
    for (const [i, flow] of wanted(outlets).entries()) expect(flow).toBeCloseTo(flows[i] ?? 0, 9);
  });
});

test("a step stands at the drops and falls below it; lips side by side count once", () => {
  const answers = answersOf(
    {
      falls: [...falls, { name: "beside", step: 2, width: 1, drop: 1.5 }],
      reaches: [
        { name: "a", after_step: 1, length: 10, fall: 0.5 },
        { name: "b", after_step: 3, length: 10, fall: 0.25 },
      ],
      outlets: [{ enters: 1, pipe_size: "2 in", above_water: 0.5 }, at(3)],
      pump_choice: "V",
    },
    yardPumps,
    { fast: true },
  );
  expect(answers.number("steps.level", 1)).toBeCloseTo(6.75, 9);
  expect(answers.number("steps.level", 2)).toBeCloseTo(4.25, 9);
  expect(answers.number("steps.level", 3)).toBeCloseTo(2.25, 9);
  expect(answers.number("outlets.height", 1)).toBeCloseTo(7.25, 9);
  expect(answers.number("outlets.height", 2)).toBeCloseTo(2.25, 9);
  expect(answers.number("total_drop")).toBeCloseTo(6.75, 9);
});

test("lips of a step share by what they want, or as chosen", () => {
  const shares = (chosen: (number | undefined)[]) => {
    const answers = answersOf(
      {
        falls: [2, 1, 1].map((width, i) => ({
          ...{ name: `lip ${i + 1}`, step: 1, width, drop: 1 },
          ...(chosen[i] === undefined ? {} : { share_chosen: chosen[i] }),
        })),
        outlets: [at(1)],
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
