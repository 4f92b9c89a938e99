import { expect, test } from "vitest";
import { entryLine } from "../../../engine/cli/trail-options.js";
import type { InputValue } from "../../../engine/template/declare.js";

const told = (old: InputValue | null, now: InputValue | null, unit: string) =>
  entryLine({
    ...{ number: 1, hash: "", time: "2026-05-04T09:00:00.000Z", by: "A", from: "drawing" },
    ...{ input: "x", old, new: now, unit },
  });

test.each([
  [7.5, 8, "ft", "x: 8 ft, was 7.5 ft (drawing, by A)\n"],
  [null, 350, "$", "x: $350, was blank (drawing, by A)\n"],
  [-2, 3.2, "$/ft", "x: $3.2/ft, was -$2/ft (drawing, by A)\n"],
  [0.1, 0.2, "", "x: 0.2, was 0.1 (drawing, by A)\n"],
  ["clay", "sand", "", "x: sand, was clay (drawing, by A)\n"],
  [4, 4, "ft", "x: 4 ft, as before (drawing, by A)\n"],
] as const)("an entry from %j to %j in %j", (old, now, unit, line) => {
  expect(told(old, now, unit)).toBe(line);
});
