import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { RowValues } from "../../../engine/job/record.js";
import { answersOf } from "../../support/water.js";
import { yardPumps } from "../../support/water-jobs.js";

const gallons = 1728 / 231;

// Hydrostatics: an open pipe whose end lies under water draws the water off down to its end.
// The pool: 10 by 4 ft, four fifths of that box: 32 ft² of water, 1.5 ft deep, on the mean 0.9 ft.
const surface = 32;
const standing = surface * 0.9;
const pool = { name: "Pool", before_level: 2, length: 10, width: 4, depth: 1.5 };
const falls = [1, 2].map((step) => ({ name: `Fall ${step}`, level: step, width: 3, drop: 2 }));

/** Water in 2 in pipe, outside less two least walls, by the foot. */
const inPipe = (length: number) => ((Math.PI / 4) * (2.067 / 12) ** 2 * length) as number;
const main = ((Math.PI / 4) * (3.068 / 12) ** 2 * 46) as number;

const line = (given: RowValues): RowValues => ({
  pipe_size: "2 in",
  length: 20,
  siphon_stop: "nothing",
  ...given,
});
const upper = line({
  name: "Upper",
  outlet_level: 1,
  siphon_stop: "end above water",
  above_water: 0.2,
});

const solve = (pipe_lines: RowValues[], given: Record<string, unknown> = {}) =>
  answersOf({ falls, pools: [pool], pipe_lines, pump_choice: "V", ...given } as never, yardPumps, {
    fast: true,
  });

const stopOf = (pipe_lines: RowValues[], given?: Record<string, unknown>) => {
  const answers = solve(pipe_lines, given);
  return {
    siphoned: answers.number("siphoned") / gallons,
    drained: answers.number("pipe_drained") / gallons,
    back: answers.number("drain_back") / gallons,
  };
};

describe("what a stop brings back through a line that ends in the pool", () => {
  const pipes = main + inPipe(40);
  test.each([
    ["3 in down: 32 ft² by a quarter foot", { end_below_water: 3 }, surface / 4, pipes],
    ["at the bottom, as long as nobody says: all of it", {}, standing, pipes],
    ["14 in down: not more than the pool holds", { end_below_water: 14 }, standing, pipes],
    ["deeper than the pool: all of it", { end_below_water: 100 }, standing, pipes],
    ["an air break", { siphon_stop: "air break" }, 0, pipes],
    ["above the water", { siphon_stop: "end above water", above_water: 0.5 }, 0, pipes],
    ["above the water, and nothing else said", { above_water: 0.5 }, 0, pipes],
    ["a check valve of its own", { siphon_stop: "check valve" }, 0, main + inPipe(20)],
    ["shut, since no flow is wanted", { override_flow: 0 }, 0, main + inPipe(20)],
  ])("%s", (_, given, siphoned, drained) => {
    const stop = stopOf([
      upper,
      line({ name: "Lower", outlet_level: 2, override_flow: 20, ...given }),
    ]);
    expect(stop.siphoned).toBeCloseTo(siphoned, 9);
    expect(stop.drained).toBeCloseTo(drained, 9);
    expect(stop.back).toBeCloseTo(siphoned + drained, 9);
  });

  test("two lines: once, down to the deeper end", () => {
    const ends = [2, 6].map((end) =>
      line({ outlet_level: 2, override_flow: 20, end_below_water: end }),
    );
    expect(stopOf([upper, ...ends]).siphoned).toBeCloseTo(surface / 2, 9);
  });

  test("a pot of 3 ft² with its pipe 10 in down, in place of the pool", () => {
    const pot = line({ outlet_level: 2, override_flow: 20, pot_surface: 3, pot_depth: 24 });
    const { pot_water } = { pot_water: solve([upper, pot]).number("pot_water") / gallons };
    expect(pot_water).toBeCloseTo(6, 9);
    expect(stopOf([upper, pot]).siphoned).toBeCloseTo(6, 9);
    expect(stopOf([upper, { ...pot, end_below_water: 10 }]).siphoned).toBeCloseTo(2.5, 9);
    expect(stopOf([upper, { ...pot, siphon_stop: "air break" }]).siphoned).toBe(0);
  });
});

describe("a pot that stands 2 ft above the water of its level, its pipe under its own 24 in", () => {
  const pot = line({ name: "Pot", outlet_level: 2, override_flow: 20 });
  const sized = { pot_surface: 3, pot_depth: 24 };
  const given = (row: RowValues) => solve([upper, { ...pot, ...row }]);

  test("is lifted to, measured to, and keeps its siphon", () => {
    const answers = given({ ...sized, pot_rise: 2, measured_height: 4 });
    expect(answers.number("pipe_lines.calculated_height", 2)).toBeCloseTo(4, 9);
    expect(answers.yes("pipe_lines.height_agrees", 2)).toBe(true);
    expect(answers.number("siphoned") / gallons).toBeCloseTo(6, 9);
  });

  test("runs out through a line that ends lower, past a check valve in the main", () => {
    const low = line({ name: "Low", outlet_level: 2, override_flow: 20, above_water: 1 });
    const valve = { check_valve_fitted: true };
    const stop = (row: RowValues) => stopOf([{ ...pot, ...sized, ...row }, low], valve).siphoned;
    expect(stop({ pot_rise: 2 })).toBeCloseTo(6, 9);
    expect(stop({})).toBe(0);
  });

  test.each([
    [
      "as a pipe's end above its water, nothing said of the siphon",
      { ...sized, above_water: 2 },
      false,
    ],
    [
      "the same, said to stop it",
      { ...sized, above_water: 2, siphon_stop: "end above water" },
      true,
    ],
    ["as the pot's own height", { ...sized, pot_rise: 2 }, true],
    ["no pot at all", { above_water: 2 }, true],
  ])("%s", (_, row, holds) => {
    expect(given(row).yes("pipe_lines.pot_siphon_answered", 2)).toBe(holds);
  });

  test("a height of a pot that has no size", () => {
    expect(given({ pot_rise: 2 }).yes("pipe_lines.pot_given", 2)).toBe(false);
    expect(given({ ...sized, pot_rise: 2 }).yes("pipe_lines.pot_given", 2)).toBe(true);
  });
});

describe("a check valve in the main", () => {
  const fitted = { check_valve_fitted: true };
  test("stops the only line, and the lowest", () => {
    const low = line({ outlet_level: 2, end_below_water: 3 });
    expect(stopOf([low], fitted).back).toBe(0);
    expect(stopOf([{ ...upper, siphon_stop: "check valve" }, low], fitted).back).toBe(0);
  });

  test("does not stop a line that ends higher: it runs out through the lower one", () => {
    const high = line({ outlet_level: 1, pot_surface: 4, pot_depth: 12 });
    const low = line({ outlet_level: 2, override_flow: 20, length: 30 });
    expect(stopOf([high, low], fitted).siphoned).toBeCloseTo(4, 9);
    expect(stopOf([high, low], fitted).drained).toBeCloseTo(inPipe(20), 9);
    const shut = { ...low, override_valve_setting: 90 };
    expect(stopOf([high, shut], fitted).back).toBe(0);
  });
});

test("a line's own check valve costs head: 100 fT of 0.019 in 2 in pipe (Crane TP 410)", () => {
  const loss = (siphon_stop: string) =>
    solve([line({ outlet_level: 1, siphon_stop })]).number("pipe_lines.loss_open", 1);
  expect(loss("check valve") - loss("nothing")).toBeCloseTo(1.9, 9);
});

// By hand of another kind: the pool is let down by thousandths while some open end lies under it
// and the water finds a way: out of the pump without a check valve in the main, or a lower line.
test("any lines into one pool: as much as letting it down step by step", () => {
  const ways = ["nothing", "check valve", "air break"] as const;
  const one = fc.record({
    outlet_level: fc.constantFrom(1, 2),
    siphon_stop: fc.constantFrom(...ways),
    end_below_water: fc.integer({ min: 0, max: 24 }),
    override_valve_setting: fc.constantFrom(0, 40, 90),
  });
  fc.assert(
    fc.property(fc.array(one, { minLength: 1, maxLength: 8 }), fc.boolean(), (lines, valve) => {
      const mayLeave = (step: number) =>
        !valve ||
        lines.some((other) => other.override_valve_setting < 90 && other.outlet_level > step);
      let depth = 0;
      let water = 0;
      const drawn = () =>
        lines.some(
          ({ outlet_level, siphon_stop, end_below_water, override_valve_setting }) =>
            outlet_level === 2 &&
            siphon_stop === "nothing" &&
            override_valve_setting < 90 &&
            end_below_water > depth + 1e-9 &&
            mayLeave(outlet_level),
        );
      while (depth < 18 - 1e-9 && water < standing && drawn()) {
        depth += 0.125;
        water = Math.min(standing, water + (surface * 0.125) / 12);
      }
      const stop = stopOf(lines.map(line), { check_valve_fitted: valve });
      expect(stop.siphoned).toBeCloseTo(water, 6);
    }),
    { numRuns: 80 },
  );
});

describe("the crew is told what to build", () => {
  const words = (given: RowValues) =>
    solve([upper, line({ name: "Lower", outlet_level: 2, override_flow: 20, ...given })]).text(
      "pipe_lines.siphon_words",
      2,
    );
  test.each([
    [{ siphon_stop: "air break" }, /^air break in this line, higher than the water/],
    [{ siphon_stop: "air break", above_water: 0.5 }, /^air break in this line, 6 in above the/],
    [{ siphon_stop: "check valve" }, /^check valve in this line/],
    [{ above_water: 0.5 }, /^end 6 in above the water/],
    [{ end_below_water: 5 }, /^end 5 in below the resting water and no deeper/],
    [{ outlet_level: 1 }, /^end in the open, above any standing water$/],
    [{ override_flow: 0 }, /^$/],
  ])("%j", (given, said) => {
    expect(words(given)).toMatch(said);
  });
});

describe("checks", () => {
  const failing = (given: RowValues) => {
    const answers = solve([
      upper,
      line({ name: "Lower", outlet_level: 2, override_flow: 20, ...given }),
    ]);
    return {
      above: !answers.yes("pipe_lines.end_is_above", 2),
      counted: !answers.yes("pipe_lines.siphon_counted", 2),
      emptied: !answers.yes("pool_siphons.keeps_water", 1),
    };
  };
  test("an end that is to stand above the water, but does not", () => {
    expect(failing({ siphon_stop: "end above water" }).above).toBe(true);
    expect(failing({ siphon_stop: "end above water", above_water: 0.1 }).above).toBe(false);
  });
  test("an end under water that nobody has named", () => {
    const ends = { outlet_level: 1, above_water: 0 };
    expect(failing(ends).counted).toBe(true);
    expect(failing({ ...ends, siphon_stop: "air break" }).counted).toBe(false);
    expect(failing({ outlet_level: 1 }).counted).toBe(false);
    expect(failing({ ...ends, pot_surface: 2, pot_depth: 10 }).counted).toBe(false);
  });
  test("an air break that the pump is not known to lift to", () => {
    const broken = (given: RowValues) => {
      const answers = solve([line({ outlet_level: 1, siphon_stop: "air break", ...given })]);
      return [
        answers.yes("pipe_lines.break_has_height", 1),
        answers.number("pipe_lines.height", 1),
      ];
    };
    const [low, high] = [broken({}), broken({ above_water: 0.5 })];
    expect([low[0], high[0]]).toEqual([false, true]);
    expect((high[1] as number) - (low[1] as number)).toBeCloseTo(0.5, 9);
    expect(broken({ measured_height: 4 })[0]).toBe(true);
    expect(broken({ siphon_stop: "nothing" })[0]).toBe(true);
    expect(broken({ override_flow: 0 })[0]).toBe(true);
  });
  test("a pool that loses more than half its depth", () => {
    expect(failing({}).emptied).toBe(true);
    expect(failing({ end_below_water: 8 }).emptied).toBe(false);
  });
});
