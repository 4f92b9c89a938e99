import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { RowValues } from "../../../engine/job/record.js";
import { soilVolume } from "../../../sheets/vocabulary/quantities.js";
import { stream, work } from "./bench.js";
import { figure } from "./figure.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** By slices: the middle rule over many of them. */
function slices(area: (at: number) => number, over: number): number {
  const count = 4000;
  let sum = 0;
  for (let i = 0; i < count; i++) sum += area(((i + 0.5) / count) * over) * (over / count);
  return sum / 27;
}

test("a prismoid is the sum of its slices", () => {
  const volume = slices((z) => (14 + 2 * 1.5 * z) * (10 + 2 * 1.5 * z), 6);
  expect(figure("PRISMOID(14[ft], 10[ft], 6[ft], 1.5)", soilVolume)).toBeCloseTo(volume, 4);
});

test("a feathered end is the sum of its slices", () => {
  const [high, top, run, ends] = [3, 4, 2.5, 4];
  const volume = slices((x) => {
    const z = high * (1 - x / (ends * high));
    return z * (top + run * z);
  }, ends * high);
  expect(figure("FEATHERED_END(3[ft], 4[ft], 2.5, 4)", soilVolume)).toBeCloseTo(volume, 4);
});

describe("scaling", () => {
  const berm = fc.record({
    length: between(1, 100),
    height: between(0.2, 8),
    top: between(0, 20),
    slope: between(0.5, 5),
    end_slope: between(0, 8),
  });
  test("a berm twice as large every way holds eight times the soil on four times the ground", () => {
    fc.assert(
      fc.property(berm, (small) => {
        const large = {
          ...small,
          length: 2 * small.length,
          height: 2 * small.height,
          top: 2 * small.top,
        };
        const [one, two] = [small, large].map((shape) =>
          work({ ...stream, berms: [{ name: "berm", ...shape }] }),
        );
        const ratio = (name: string) => (two?.number(name) ?? 0) / (one?.number(name) ?? 1);
        expect(ratio("berms.volume[1]")).toBeCloseTo(8, 8);
        expect(ratio("berms.footprint[1]")).toBeCloseTo(4, 8);
      }),
      { numRuns: 40 },
    );
  });

  test("soil is neither made nor lost between dig, berm, haul and import", () => {
    fc.assert(
      fc.property(
        berm,
        fc.constantFrom("sand", "clay", "common earth"),
        fc.boolean(),
        between(0, 1),
        (shape, soil, fits, kept) => {
          const { number } = work({
            ...stream,
            ...{ soil_kind: soil, dirt_fits_berm: fits, topsoil_kept: kept },
            berms: [{ name: "berm", ...shape }],
          });
          const loose = number("loose_factor");
          const come = number("fill_on_site") + number("import_volume") / loose;
          const topsoil = number("strip_volume") * (1 - kept);
          const gone = number("fill_needed") + number("haul_volume") / loose - topsoil;
          expect(come).toBeCloseTo(gone, 7);
          const loads = number("haul_loads");
          expect(loads * number("haul_bed")).toBeGreaterThanOrEqual(number("haul_volume") - 1e-5);
          expect(loads * number("haul_payload")).toBeGreaterThanOrEqual(
            number("haul_weight") - 1e-5,
          );
          if (fits)
            expect(
              Math.min(number("import_volume"), number("fill_on_site") - number("dirt_used")),
            ).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 40 },
    );
  });

  test("stone by its own size goes with each side and with what is not void", () => {
    fc.assert(
      fc.property(
        between(1, 100),
        between(1, 9),
        between(0.1, 4),
        between(0, 0.6),
        (l, w, t, v) => {
          const of = (length: number, width: number, thickness: number, voids: number) =>
            work({
              ...stream,
              stones: [{ name: "a", code: "a", rock: "granite" }],
              stone_places: [
                {
                  ...{ name: "here", covers: "own size", share: 1, stone: "a" },
                  ...{ length, width, thickness, voids },
                },
              ],
            }).number("stone_places.tons[1]");
          expect(of(l, w, t, v)).toBeCloseTo((l * w * t * (1 - v) * 168) / 2000, 6);
          expect(of(2 * l, 2 * w, 2 * t, v) / of(l, w, t, v)).toBeCloseTo(8, 8);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe("digs by hand: half cut into the ground, with 4 in for stone, 6 in of topsoil", () => {
  const { number } = work({
    strip_depth: 6,
    working_room: 1,
    dig_slope: 0.5,
    runs: [{ length: 10, width: 3, side: 1, bank_height: 1 }],
    pools: [{ length: 9, width: 6, depth: 2 }],
    berms: [{ name: "bank", length: 20, height: 2, top: 4, slope: 3, end_slope: 4 }],
  });
  const deep = 16 / 12;
  const bottom = 3 + 8 / 12;
  const pool = (9 + 8 / 12) * (6 + 8 / 12);

  test("a reach and a pool", () => {
    expect(number("channel_dig")).toBeCloseTo((0.5 * 10 * (bottom + deep) * deep) / 27, 9);
    expect(number("pool_dig")).toBeCloseTo((0.5 * pool * (2 * 0.6 + 4 / 12)) / 27, 9);
  });

  test("the topsoil over them is stripped, and not dug a second time", () => {
    // at the middle of the topsoil, 3 in down: reach 10 ft at its top, so 5.83 ft wide
    const reach = 0.5 * 10 * (bottom + 2 * (deep - 0.25)) * 0.5;
    // sides 0.5 to 1: by Simpson's rule on the areas at the ground, 3 in and 6 in down
    const at = (down: number) => (14 + (3.5 + 2 / 12 - down)) * (10 + (3.5 + 2 / 12 - down));
    const basin = (0.5 / 6) * (at(0) + 4 * at(0.25) + at(0.5));
    expect(number("basin_topsoil")).toBeCloseTo(basin / 27, 9);
    expect(number("dig_topsoil")).toBeCloseTo((basin + reach + 0.5 * pool * 0.5) / 27, 9);
    const whole = number("basin_dig") + number("channel_dig") + number("pool_dig");
    expect(number("dig_volume")).toBeCloseTo(whole - (basin + reach + 0.5 * pool * 0.5) / 27, 9);
  });

  test("ground is stripped 2 ft beyond each dig, and under the berm", () => {
    const basin = (14 + 3.5 + 2 / 12 + 4) * (10 + 3.5 + 2 / 12 + 4);
    const reach = 10 * (bottom + 2 * deep + 4);
    const berm = 20 * (4 + 12) + 2 * 8 * (4 + 6);
    const stripped = basin + reach + (9 + 8 / 12 + 4) * (6 + 8 / 12 + 4) + berm;
    expect(number("strip_area")).toBeCloseTo(stripped, 9);
  });

  test("the layer stripped under a berm is filled again", () => {
    // 2 ft high, 4 ft on top, sides 3 to 1: 20 sq ft, 20 ft long; each end 8 ft long
    const shape = 20 * 20 + 2 * 4 * 2 * ((4 * 2) / 2 + (3 * 4) / 3);
    const under = 0.5 * (20 * 16 + 2 * 8 * 10);
    expect(number("berm_foundation")).toBeCloseTo(under / 27, 9);
    expect(number("berm_volume")).toBeCloseTo((shape + under) / 27, 9);
    expect(number("fill_needed") * 0.9).toBeCloseTo(
      (shape + under) / 27 + number("basin_backfill"),
      9,
    );
  });
});

test("a dig shallower than the topsoil is stripped whole, and none of it is left to dig", () => {
  const { number } = work({
    ...{ strip_depth: 24, basin_depth: 1, channel_cut: 1 },
    runs: [{ length: 10, width: 3, side: 1, bank_height: 1 }],
    pools: [{ length: 9, width: 6, depth: 1 }],
  });
  expect(number("channel_dig")).toBeGreaterThan(1);
  expect(number("dig_volume")).toBeCloseTo(0, 9);
});

describe("stone", () => {
  test.each([
    ["lips", (3 + 4) * 2 * 0.5],
    ["bank edges", 2 * 30 * 2 * 0.5],
    // banks 1 ft high at half to 1: a slope of 1.118 ft
    ["bank faces", 2 * 30 * 1.25 ** 0.5 * 0.5],
    ["fall shoulders", 2 * (2 + 1.5) * 2 * 0.5],
    ["fall faces", (3 * 2 + 4 * 1.5) * 0.5],
    ["basin top", 96 * 0.5],
    ["own size", 7 * 2 * 0.5],
  ])("that covers %s", (covers, volume) => {
    const row = { name: "a", stone: "boulders", covers, share: 0.5, voids: 0.4 };
    const { number } = work({
      ...stream,
      stone_places: [{ ...row, length: 7, width: 2, thickness: 0.5 }],
    });
    expect(number("stone_places.volume[1]")).toBeCloseTo(0.5 * volume, 9);
  });

  test("that has no thickness is a failed check, not a silent zero", () => {
    const row = { name: "cap", stone: "boulders", covers: "basin top", share: 1 };
    const worked = work({ ...stream, stone_places: [{ ...row, thickness: 0 }] });
    expect(worked.value("stone_places.measured[1]")).toBe(false);
    // the second: no place is left that buys the cobble of the bed
    expect(worked.number("checks_failed")).toBe(2);
    expect(worked.value("beds_bought.bed_bought[5]")).toBe(false);
  });

  test("a slab of 3 x 2 x 1/2 ft weighs nine tenths of its box, a round stone pi/6", () => {
    const slab = { name: "slab", code: "a", rock: "field stone" };
    const sized = { ...slab, stone_length: 3, stone_width: 2, stone_height: 0.5 };
    const of = (row: RowValues) =>
      work({ ...stream, stones: [row], stone_places: [] }).number("stones.heaviest[1]");
    expect(of({ ...sized })).toBeCloseTo(445.5, 9);
    expect(of({ ...sized, fullness: 1 })).toBeCloseTo(495, 9);
    expect(of({ ...sized, fullness: 0.52 })).toBeCloseTo(257.4, 9);
    // the template's own kinds: slab .9, boulder 2.5 x 2 x 1.5 ft at .7, and a quarter for doubt
    const { number } = work(stream);
    expect(number("stones.heaviest[1]")).toBeCloseTo(445.5, 9);
    expect(number("heaviest_stone")).toBeCloseTo(7.5 * 165 * 0.7, 9);
    expect(number("load_on_hook")).toBeCloseTo(7.5 * 165 * 0.7 * 1.25 + 50, 9);
  });

  test.each([
    [8, 2400],
    [9, 1900],
    [10, 1900],
    [13.5, 1200],
    [14.5, 0],
  ])("at a reach of %f ft the chart allows %d lb", (reach, lift) => {
    const { number, value } = work({ ...stream, working_radius: reach });
    expect(number("machine_lift")).toBe(lift);
    expect(value("machine_lifts")).toBe(number("load_on_hook") <= lift);
  });
});

describe("trees and walls", () => {
  const tree = (distance: number, fill: number, built = false, wall = 0) =>
    work({
      ...stream,
      trees: [{ name: "oak", trunk: 20, distance, fill_planned: fill, wall_built: built }],
      walls: wall === 0 ? [] : [{ name: "wall", length: 32, height: wall }],
    });

  test("outside the root zone any fill may lie", () => {
    expect(tree(20, 3).value("trees.wall_needed[1]")).toBe(false);
  });
  test("within it a few inches, at the trunk none", () => {
    expect(tree(10, 0.25).value("trees.wall_needed[1]")).toBe(false);
    expect(tree(10, 1).number("trees.fill_allowed[1]")).toBeCloseTo(0.25, 12);
    expect(tree(10, 0.2).number("trees.fill_allowed[1]")).toBeCloseTo(0.25, 12);
    expect(tree(2, 0.1).number("trees.fill_allowed[1]")).toBe(0);
  });
  test("a wall across the root zone, 12 ft from a trunk of 20 in, is 32 ft long", () => {
    // half of it: the other side of a triangle of 20 and 12
    expect(tree(12, 2).number("trees.wall_length[1]")).toBeCloseTo(2 * 16, 9);
    expect(tree(12, 2).value("trees.kept[1]")).toBe(false);
    expect(tree(12, 2, true, 2).value("trees.kept[1]")).toBe(true);
    // said to be held by a wall, but no wall as high is in the table
    expect(tree(12, 2, true).value("trees.kept[1]")).toBe(false);
    expect(tree(12, 2, true, 1.9).value("trees.kept[1]")).toBe(false);
  });

  test.each([
    ["blank, and the fill inside the root zone", undefined, 12, false],
    ["blank, and the fill outside it", undefined, 21, true],
    ["inside", 19.9, 25, false],
    ["at its edge", 20, 12, true],
    ["at the trunk", 0, 25, false],
  ])("digging %s: its check", (_, dig, fill, fine) => {
    const oak = { name: "oak", trunk: 20, distance: fill, fill_planned: 0 };
    const trees = [dig === undefined ? oak : { ...oak, dig_distance: dig }];
    const { number, value } = work({ ...stream, trees });
    expect(value("trees.uncut[1]")).toBe(fine);
    expect(number("trees.dug_at[1]")).toBe(dig ?? fill);
  });

  test("a dry-laid wall by hand: 30 ft long, 3 ft high", () => {
    const { number } = work({
      ...stream,
      walls: [{ name: "w", length: 30, height: 3, kind: "stone" }],
    });
    // buried 6 in; foot half the height, 1.75 ft; top 1 ft; a quarter is void
    expect(number("wall_face")).toBeCloseTo(30 * 3.5, 9);
    expect(number("wall_stone")).toBeCloseTo((30 * 3.5 * (2.75 / 2) * 0.75 * 165) / 2000, 9);
    expect(number("wall_base")).toBeCloseTo((30 * 2.75 * 0.5) / 27, 9);
    expect(number("wall_blocks")).toBe(0);
  });

  test("a block wall: its face over the face of a block, rounded up", () => {
    const { number } = work({
      ...stream,
      walls: [{ name: "w", length: 20, height: 2, kind: "block" }],
    });
    expect(number("wall_blocks")).toBe(Math.ceil((20 * 2.5) / 0.67));
    expect(number("wall_stone")).toBe(0);
  });
});

test("mats reach the whole way, in whole mats", () => {
  expect(
    work({ ...stream, access_length: 60, mat_length: 8, mat_rows: 2 }).number("ground_mats"),
  ).toBe(16);
  expect(
    work({ ...stream, access_length: 64, mat_length: 8, mat_rows: 1 }).number("ground_mats"),
  ).toBe(8);
});
