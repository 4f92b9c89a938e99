import { expect, test } from "vitest";
import { answersOf } from "../../support/water.js";
import { yardPumps } from "../../support/water-jobs.js";

/** One outlet, its ball valve turned so far from open. */
const turned = (angle: number) =>
  answersOf(
    {
      falls: [{ name: "Fall", level: 1, width: 3, drop: 1 }],
      pipe_lines: [
        { name: "One", outlet_level: 1, pipe_size: "2 in", override_valve_setting: angle },
      ],
      pump_choice: "F",
    },
    yardPumps,
    { fast: true },
  );

// Plug cock by Weisbach: 206 at 60° as listed in Perry's handbook, 486 at 65° (from memory).
test.each([
  [60, 206],
  [65, 486],
])("at %d° the valve adds a K of %d", (angle, loss) => {
  expect(turned(angle).number("pipe_lines.valve_loss", 1)).toBeCloseTo(loss, 6);
});

// A cock after Weisbach is shut near 82° (from memory).
test.each([82, 85, 90])("at %d° it is shut", (angle) => {
  expect(turned(angle).number("pipe_lines.actual_flow", 1)).toBeLessThan(0.001);
});

test("between 65° and 82° the loss goes on as it rose from 50° to 65°, ever steeper", () => {
  const loss = (angle: number) => turned(angle).number("pipe_lines.valve_loss", 1);
  const trend = (angle: number) => 486 * (17 / (82 - angle)) ** 3.3;
  for (const angle of [55, 60, 70, 75, 80]) {
    expect(Math.abs(loss(angle) / trend(angle) - 1)).toBeLessThan(0.01);
  }
  expect(loss(81)).toBeGreaterThan(loss(80));
});
