import { describe, expect, test } from "vitest";
import type { RowValues } from "../../../engine/job/record.js";
import { answersOf } from "../../support/water.js";
import { yardPumps } from "../../support/water-jobs.js";

const fall = (level: number, more: RowValues = {}): RowValues => ({
  name: `fall ${level}`,
  level,
  width: 2,
  ...more,
});
const line: RowValues = { outlet_level: 1, pipe_size: "2 in" };
const answers = (inputs: Record<string, unknown>) =>
  answersOf({ pipe_lines: [line], pump_choice: "V", ...inputs } as never, yardPumps, {
    fast: true,
  });

describe("inches stand beside the feet and are added to them", () => {
  const told = answers({
    falls: [
      fall(1, { width: 2, width_plus: 6, drop: 1, drop_plus: 3 }),
      fall(2, { width: 0, width_plus: 18, drop_plus: 9 }),
    ],
    runs: [
      {
        name: "run",
        after_level: 1,
        length: 10,
        length_plus: 6,
        width: 2,
        width_plus: 3,
        fall_plus: 6,
      },
    ],
    pools: [
      {
        name: "pool",
        before_level: 1,
        length: 6,
        length_plus: 3,
        width: 4,
        width_plus: 9,
        depth: 1,
        depth_plus: 6,
      },
    ],
  });
  test.each([
    ["falls.width_counted", 1, 2.5],
    ["falls.width_counted", 2, 1.5],
    ["falls.drop_counted", 1, 1.25],
    ["falls.drop_counted", 2, 0.75],
    ["runs.length_counted", 1, 10.5],
    ["runs.width_counted", 1, 2.25],
    ["runs.fall_counted", 1, 0.5],
    ["pools.length_counted", 1, 6.25],
    ["pools.width_counted", 1, 4.75],
    ["pools.depth_counted", 1, 1.5],
  ])("%s[%d] is %d ft", (name, row, feet) => expect(told.number(name, row)).toBeCloseTo(feet, 9));
});

describe("rod readings give the heights that nobody has given", () => {
  // rim 9.00; first lip 3.00, landing 5.00; second lip 5.50, landing 8.25: 0.75 down to the rim
  const readings = {
    rod_rim: 9,
    elevations: [
      { rod_lip: 3, rod_landing: 5 },
      { rod_lip: 5.5, rod_landing: 8.25 },
    ],
  };
  const runs = [
    { name: "a", after_level: 1, length: 10 },
    { name: "b", after_level: 2, length: 5 },
    { name: "c", after_level: 2, length: 10 },
  ];
  test("drops, falls of the runs by their length, and the height of a pipe end", () => {
    const read = answers({
      ...readings,
      falls: [fall(1), fall(2)],
      runs,
      pipe_lines: [{ ...line, rod_end: 2.75 }],
    });
    expect(read.number("falls.drop_counted", 1)).toBeCloseTo(2, 9);
    expect(read.number("falls.drop_counted", 2)).toBeCloseTo(2.75, 9);
    expect(read.number("runs.fall_counted", 1)).toBeCloseTo(0.5, 9);
    expect(read.number("runs.fall_counted", 2)).toBeCloseTo(0.25, 9);
    expect(read.number("runs.fall_counted", 3)).toBeCloseTo(0.5, 9);
    // all drops and falls are those from the first lip to the rim, which the basin water here stands at
    expect(read.number("levels.height", 1)).toBeCloseTo(9 - 3, 9);
    expect(read.number("pipe_lines.height", 1)).toBeCloseTo(9 - 2.75, 9);
  });
  test("a level without falls is passed over", () => {
    const elevations = [{ rod_lip: 3, rod_landing: 5 }, {}, { rod_lip: 5.5, rod_landing: 8.25 }];
    const read = answers({ ...readings, elevations, falls: [fall(1), fall(3)], runs });
    expect(read.number("elevations.rod_fall", 1)).toBeCloseTo(0.5, 9);
    expect(read.number("elevations.rod_fall", 3)).toBeCloseTo(0.75, 9);
  });
  test("what is given directly counts, and a run that nobody measured falls as usual", () => {
    const given = answers({
      ...readings,
      falls: [fall(1, { drop: 1.75 }), fall(2)],
      runs: [{ name: "a", after_level: 1, length: 10, fall: 0.3 }],
      pipe_lines: [{ ...line, rod_end: 2.75, measured_height: 7 }],
    });
    expect(given.number("falls.drop_counted", 1)).toBeCloseTo(1.75, 9);
    expect(given.number("runs.fall_counted", 1)).toBeCloseTo(0.3, 9);
    expect(given.number("pipe_lines.height", 1)).toBeCloseTo(7, 9);
    const usual = answers({
      falls: [fall(1, { drop: 2 })],
      runs: [{ name: "a", after_level: 1, length: 10 }],
    });
    expect(usual.number("runs.fall_counted", 1)).toBeCloseTo(0.25, 9);
  });
});
