import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stream, work } from "./bench.js";

const gallons = 1728 / 231;

// The basin of 12 x 8 x 3.5 ft of the other tests: 48 crates 27 x 16 x 17 in, one vault, stone at 40 %.
const plan = 12 * 8;
const piece = (27 * 16) / 144;
const top = (2 * 17) / 12;
const below = 24 * piece * 0.95 + piece + (plan - 25 * piece) * 0.4;
const above = piece + (plan - piece) * 0.4;
const heldBelow = (level: number) =>
  (below * Math.min(level, top) + above * Math.max(level - top, 0)) * gallons;
const levelOf = (water: number) =>
  water / gallons <= below * top
    ? water / gallons / below
    : top + (water / gallons - below * top) / above;

// The stand-in's water: 300 gal in the stream, 40 come back out of the pipes at a stop.
const stop = 340;

describe("the fill float by hand", () => {
  const { number, value } = work(stream, { judged: true });
  const full = 3; // full line 6 in below the rim

  test("stands so that a stop fills the basin to its full line", () => {
    const level = levelOf(heldBelow(full) - stop);
    expect(number("float_level")).toBeCloseTo(level, 9);
    expect(number("float_below_rim")).toBeCloseTo(12 * (3.5 - level), 9);
    expect(number("stop_spill")).toBe(0);
    expect(value("float_spills_nothing")).toBe(true);
  });

  test("may stand no higher than leaves room for the stop below the rim", () => {
    const highest = levelOf(heldBelow(3.5) - stop);
    expect(number("float_highest")).toBeCloseTo(highest, 9);
    expect(number("float_least_below_rim")).toBeCloseTo(12 * (3.5 - highest), 9);
  });

  test("at the full line spills what the room above it does not take", () => {
    const set = work({ ...stream, override_float: 6 });
    const spilled = stop - (heldBelow(3.5) - heldBelow(3));
    expect(spilled).toBeGreaterThan(50);
    expect(set.number("stop_spill")).toBeCloseTo(spilled, 6);
    expect(set.value("float_spills_nothing")).toBe(false);
    expect(set.value("float_spills_nothing_message")).toMatch(
      /over a float 6\.00 in below the rim is room/,
    );
  });

  test("below the pump's least water fails", () => {
    expect(work({ ...stream, override_float: 37 }).value("float_covers_pump")).toBe(false);
    expect(work({ ...stream, override_float: 35 }).value("float_covers_pump")).toBe(true);
  });
});

describe("a float chosen lower than the full line asks for", () => {
  const chosen = work({ ...stream, override_float: 30 }, { judged: true });
  const { number } = chosen;
  const rest = heldBelow(1) + stop;

  test("is the level while running, and what comes back the level at rest", () => {
    expect(number("level_running")).toBeCloseTo(1, 9);
    expect(number("level_at_rest")).toBeCloseTo(levelOf(rest), 9);
    expect(number("running_below_rim")).toBeCloseTo(30, 9);
    expect(number("basin_days.running_level[1]")).toBeCloseTo(1, 9);
  });

  test("leaves fewer days without a fill", () => {
    const spare = rest - stop - heldBelow(0.5);
    expect(number("days_it_lasts")).toBe(Math.floor(spare / number("loss_a_day")));
    expect(number("days_it_lasts")).toBeLessThan(work().number("days_it_lasts"));
    expect(chosen.value("float_keeps_days")).toBe(rest >= number("basin_water_needed"));
    expect(work({ ...stream, override_float: 35 }).value("float_keeps_days")).toBe(false);
  });

  test("chosen higher it fills no more than the full line, as far as days go", () => {
    const higher = work({ ...stream, override_float: 8 });
    expect(higher.number("days_it_lasts")).toBe(work().number("days_it_lasts"));
    expect(higher.value("float_keeps_days")).toBe(true);
  });
});

describe("the lift against the level of the running water", () => {
  const agrees = (rim_above_water: number) => work({ ...stream, rim_above_water });
  const below = agrees(10).number("running_below_rim");

  test("agrees within half an inch", () => {
    expect(agrees(below - 0.4).value("lift_matches_level")).toBe(true);
    expect(agrees(below - 0.6).value("lift_matches_level")).toBe(false);
  });

  test("names what to enter, and that then agrees", () => {
    const said = String(agrees(0).value("lift_matches_level_message"));
    const [, entered] = /enter ([\d.]+) in as stream end above basin water/.exec(said) ?? [];
    expect(Number(entered)).toBeGreaterThanOrEqual(below);
    expect(Number(entered)).toBeLessThan(below + 0.1);
    expect(agrees(Number(entered)).value("lift_matches_level")).toBe(true);
  });
});

describe("the first fill counts each water once", () => {
  const { number } = work(stream, { judged: true });
  const pools = number("pool_water");

  test("running: basin up to the float, stream, bed, pools, pots, pipes", () => {
    const running = heldBelow(number("float_level")) + 300 + 30 + pools + 10 + 40;
    expect(number("first_fill_water")).toBeCloseTo(running, 6);
    expect(number("first_fill_hours")).toBeCloseTo(running / 4 / 60, 6);
  });

  test("and at rest: the full basin, and what did not come back to it", () => {
    const rest = heldBelow(3) + 30 + pools + 10 + (40 - 40);
    expect(number("first_fill_water")).toBeCloseTo(rest, 6);
  });
});

test("any float that is let stand spills nothing, and an inch above the highest spills", () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      between(3, 30),
      between(3, 20),
      between(2, 8),
      between(0, 1500),
      (basin_length, basin_width, basin_depth, stream_water) => {
        const basin = { ...stream, basin_length, basin_width, basin_depth, stream_water };
        const { number } = work(basin);
        const least = number("float_least_below_rim");
        const set = (override_float: number) => work({ ...basin, override_float });
        if (number("float_highest") > 0) {
          expect(set(least + 0.01).value("float_spills_nothing")).toBe(true);
        }
        if (least > 1) expect(set(least - 1).value("float_spills_nothing")).toBe(false);
      },
    ),
    { numRuns: 40 },
  );
});

describe("the length that would do", () => {
  // without crates and vault, so that all water grows with the length
  const plain = { ...stream, vaults_needed: 0, crate_height: 60, stream_water: 900 };
  const of = (given: object) => work({ ...plain, ...given });

  test("does: the basin made as long holds what it must, and not a gallon more", () => {
    const short = of({});
    expect(short.value("basin_holds")).toBe(false);
    const basin_length = short.number("length_by_volume");
    const long = of({ basin_length });
    expect(long.number("basin_water_held")).toBeCloseTo(long.number("basin_water_needed"), 6);
    // told in whole crates, of which one is no more than is needed
    const longer = short.number("basin_length_enough") - basin_length;
    expect(longer).toBeGreaterThanOrEqual(0);
    expect(longer).toBeLessThan(short.number("crate_along") / 12);
  });

  test("is no figure where no length would do", () => {
    const shallow = of({ basin_depth: 1.1, basin_freeboard: 8 });
    expect(shallow.number("basin_length_enough")).toBe(0);
    expect(shallow.value("basin_holds_message")).toMatch(
      /make it deeper, since no length would do/,
    );
    const needsMiles = of({ stream_water: 60000 });
    expect(needsMiles.number("basin_length_enough")).toBe(0);
  });
});

describe("no figure where there is none", () => {
  test("a full line below the bottom holds no water, and not less", () => {
    const dry = work({ ...stream, basin_depth: 2, basin_freeboard: 36 });
    expect(dry.number("basin_water_held")).toBe(0);
    expect(dry.number("rain_room")).toBeGreaterThanOrEqual(0);
    expect(dry.value("full_line_in_hole")).toBe(false);
  });

  test("days without a fill, in words", () => {
    const words = (given: object) => work({ ...stream, ...given }).value("days_words");
    expect(words({ hours_a_day: 0 })).toBe("no loss: the level does not fall noticeably");
    expect(words({ stream_water: 5000 })).toBe("less than a day");
    expect(words({})).toMatch(/^about \d+ days?$/);
  });

  test("a chart that does not reach so far", () => {
    const far = work({ ...stream, working_radius: 30 });
    expect(far.number("chart_radius")).toBe(0);
    expect(far.number("machine_lift")).toBe(0);
    expect(far.value("machine_lifts_message")).toMatch(/shows nothing at that reach\./);
    expect(work({ ...stream, working_radius: 9 }).number("chart_radius")).toBe(10);
  });
});
