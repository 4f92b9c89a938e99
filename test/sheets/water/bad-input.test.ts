import { describe, expect, test } from "vitest";
import { CellError } from "../../../engine/formula/value.js";
import type { InputValues, RowValues } from "../../../engine/job/record.js";
import type { BookRow } from "../../../engine/template/book-layout.js";
import { answersOf } from "../../support/water.js";
import { pump, yard, yardPumps } from "../../support/water-jobs.js";

const row = (table: string, at: number, change: RowValues): InputValues => ({
  ...yard,
  [table]: (yard[table] as RowValues[]).map((one, i) =>
    i === at - 1 ? { ...one, ...change } : one,
  ),
});

const badPump = (points: number[][]): BookRow[] => [pump("V", points), ...yardPumps.slice(1)];

/** The job, the check that must fail, words that its sentence must have. */
const cases: [string, InputValues, readonly BookRow[], string, number | undefined, RegExp][] = [
  [
    "shares over 100 %",
    {
      ...yard,
      falls: (yard.falls as RowValues[]).map((one) => ({ ...one, override_share: 0.7 })),
    },
    yardPumps,
    "falls.shares_close",
    2,
    /^Left: the shares of level 2 do not add up to 100 %/,
  ],
  [
    "a line at a level that does not exist",
    row("pipe_lines", 2, { outlet_level: 9 }),
    yardPumps,
    "pipe_lines.level_exists",
    2,
    /^Side enters at level 9, which has no fall/,
  ],
  [
    "a run after a level that does not exist",
    row("runs", 1, { after_level: 7 }),
    yardPumps,
    "runs.level_exists",
    1,
    /^Bend follows level 7/,
  ],
  [
    "a top level without a line",
    row("pipe_lines", 1, { outlet_level: 2 }),
    yardPumps,
    "levels.has_line",
    1,
    /^Level 1 has falls, but no line/,
  ],
  [
    "a pump curve that does not fall",
    yard,
    badPump([
      [0, 20],
      [50, 22],
      [90, 10],
    ]),
    "pump_curve_usable",
    undefined,
    /^The curve of V/,
  ],
  [
    "a pump curve whose flows run backwards",
    yard,
    badPump([
      [0, 20],
      [50, 15],
      [40, 10],
    ]),
    "pump_curve_usable",
    undefined,
    /^The curve of V/,
  ],
  [
    "a pump curve of two points",
    yard,
    badPump([
      [0, 20],
      [90, 10],
    ]),
    "pump_curve_usable",
    undefined,
    /fewer than 3 points/,
  ],
  [
    "a pump that is not in the book",
    { ...yard, pump_choice: "Z" },
    yardPumps,
    "pump_known",
    undefined,
    /^The office book has no such pump/,
  ],
  ["a book without pumps", yard, [], "pump_known", undefined, /add one to the book/],
  [
    "a main without length",
    { ...yard, main_length: 0 },
    yardPumps,
    "main_has_length",
    undefined,
    /^The main has no length/,
  ],
  [
    "no lines",
    { ...yard, pipe_lines: [] },
    yardPumps,
    "some_lines",
    undefined,
    /^No line brings water/,
  ],
  ["no falls", { ...yard, falls: [] }, yardPumps, "some_falls", undefined, /^There is no fall/],
  ["nothing at all", {}, [], "some_falls", undefined, /^There is no fall/],
  [
    "an outlet above what the pump can lift",
    row("pipe_lines", 1, { measured_height: 60 }),
    yardPumps,
    "pipe_lines.has_flow",
    1,
    /^Head stays dry: it stands 60\.00 ft over basin water/,
  ],
  [
    "a pump that is too small",
    { ...yard, main_size: "1 in", main_length: 300 },
    yardPumps,
    "pump_strong_enough",
    undefined,
    /choose a stronger pump/,
  ],
  [
    "a fixed pump asked to run slower",
    { ...yard, pump_choice: "F", override_speed: 0.8 },
    yardPumps,
    "pump_speed_possible",
    undefined,
    /^F runs at one speed only/,
  ],
  [
    "banks too low",
    row("runs", 1, { bank_height: 0.1 }),
    yardPumps,
    "runs.banks_hold",
    1,
    /Raise the banks/,
  ],
  [
    "water too fast",
    row("pipe_lines", 1, { pipe_size: "1 in" }),
    yardPumps,
    "pipe_lines.not_too_fast",
    1,
    /go up a pipe size/,
  ],
];

describe("bad input fails a check with a sentence, and no cell shows an error", () => {
  test.each(cases)("%s", (_, inputs, pumps, check, at, sentence) => {
    const answers = answersOf(inputs, pumps, { fast: true });
    expect(answers.yes(check, at)).toBe(false);
    expect(answers.said(check, at)).toMatch(sentence);
    const errors = answers.model.cells.filter(
      ({ index }) => answers.values[index] instanceof CellError,
    );
    expect(errors.map(({ id }) => id)).toEqual([]);
  });
});

test("an unknown pipe size is refused, with the choices", () => {
  expect(() => answersOf({ ...yard, main_size: "7 in" }, yardPumps)).toThrow(
    /main_size is "7 in", but must be one of: 1 in, /,
  );
});

test("a sound job passes all its checks", () => {
  // a bed of set stone: water over loose cobble runs too shallow for any formula
  const runs = [
    { name: "Bend", after_level: 1, length: 12, fall: 0.1, bed: "stone set in mortar" },
  ];
  // the pump lifts to the air break of the first line
  const pipe_lines = (yard.pipe_lines as RowValues[]).map((one, i) =>
    i === 0 ? { ...one, above_water: 0.5 } : one,
  );
  const answers = answersOf({ ...yard, runs, pipe_lines }, yardPumps);
  const failed = answers.model.cells.filter(
    ({ declaration, index }) => declaration.kind === "check" && answers.values[index] !== true,
  );
  expect(failed.map(({ id }) => id)).toEqual([]);
});
