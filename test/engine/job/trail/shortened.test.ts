import { expect, test } from "vitest";
import { appended, headOf } from "../../../../engine/job/trail/chain.js";
import type { Change } from "../../../../engine/job/trail/entry.js";
import { shortened } from "../../../../engine/job/trail/shortened.js";
import { backwards, verifyTrail } from "../../../../engine/job/trail/verify.js";

const change = (minute: number, input: string, now: number, note?: string): Change => ({
  time: `2026-05-04T09:${String(minute).padStart(2, "0")}:00.000Z`,
  by: `Person ${minute}`,
  input,
  old: now - 1,
  new: now,
  unit: "ft",
  from: "measured on site",
  ...(note === undefined ? {} : { note }),
});
const whole = appended(
  [],
  [
    change(1, "height", 3),
    change(2, "runs.run[1]", 60, "tape"),
    change(3, "height", 4, "string line"),
    change(4, "wind", 90),
    change(5, "height", 5, "second walk"),
  ],
);

test("the last entry of each input is left, with who, when and from where, in a chain that holds", () => {
  const left = shortened(whole, "job.json");
  expect(left.map(({ input, old, new: now, by }) => [input, old, now, by])).toEqual([
    ["runs.run[1]", 59, 60, "Person 2"],
    ["wind", 89, 90, "Person 4"],
    ["height", 4, 5, "Person 5"],
  ]);
  expect(verifyTrail(left)).toEqual([]);
  expect(backwards(left)).toEqual([]);
});

test("the last note says of which trail that is what is left, and no other is touched", () => {
  expect(shortened(whole, "job.json").map(({ note }) => note)).toEqual([
    "tape",
    undefined,
    `second walk; left of a trail of 5 entries that ends with ${headOf(whole)}`,
  ]);
});

test("a note that has no room is left as it is, and where none has, nothing is made", () => {
  const full = "n".repeat(1000);
  const last = shortened(appended(whole, [change(6, "gate", 3, full)]), "job.json");
  expect(last.at(-1)?.note).toBe(full);
  expect(last.at(-2)?.note).toContain("left of a trail of 6 entries");
  expect(() => shortened(appended([], [change(1, "gate", 3, full)]), "job.json")).toThrow(
    /job\.json cannot be shortened/,
  );
});

test("an empty trail stays empty", () => {
  expect(shortened([], "job.json")).toEqual([]);
});
