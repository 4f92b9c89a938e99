import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { soilVolume } from "../../../engine/template/index.js";
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
            ...{ soil_kind: soil, spoil_fits: fits, topsoil_kept: kept },
            berms: [{ name: "berm", ...shape }],
          });
          const loose = number("loose_factor");
          const come = number("fill_at_hand") + number("import_volume") / loose;
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
              Math.min(number("import_volume"), number("fill_at_hand") - number("spoil_used")),
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
              stones: [
                {
                  ...{ name: "a", code: "a", covers: "own size", share: 1, rock: "granite" },
                  ...{ length, width, thickness, voids },
                },
              ],
            }).number("stones.tons[1]");
          expect(of(l, w, t, v)).toBeCloseTo((l * w * t * (1 - v) * 168) / 2000, 6);
          expect(of(2 * l, 2 * w, 2 * t, v) / of(l, w, t, v)).toBeCloseTo(8, 8);
        },
      ),
      { numRuns: 40 },
    );
  });
});

test("a pool and a reach half cut into the ground, with 4 in for stone", () => {
  const { number } = work({
    reaches: [{ length: 10, width: 3, side: 1, bank_height: 1 }],
    pools: [{ length: 9, width: 6, depth: 2 }],
  });
  const deep = 1 + 1 / 3;
  expect(number("channel_dig")).toBeCloseTo((0.5 * 10 * (3 + 2 / 3 + deep) * deep) / 27, 9);
  expect(number("pool_dig")).toBeCloseTo((0.5 * 54 * (2 * 0.6 + 1 / 3)) / 27, 9);
  expect(number("dig_volume")).toBeCloseTo(
    number("basin_dig") + number("channel_dig") + number("pool_dig"),
    9,
  );
});

describe("stone", () => {
  test.each([
    ["lips", (3 + 4) * 2 * 0.5],
    ["banks", 2 * 30 * 2 * 0.5],
    ["stream bed", (18 * 3 + 12 * 4) * 0.5],
    ["fall faces", (3 * 2 + 4 * 1.5) * 0.5],
    ["basin top", 96 * 0.5],
    ["own size", 7 * 2 * 0.5],
  ])("that covers %s", (covers, volume) => {
    const row = { name: "a", code: "a", covers, share: 0.5, rock: "granite", voids: 0.4 };
    const { number } = work({
      ...stream,
      stones: [{ ...row, length: 7, width: 2, thickness: 0.5 }],
    });
    expect(number("stones.volume[1]")).toBeCloseTo(0.5 * volume, 9);
  });

  test("that has no thickness is a failed check, not a silent zero", () => {
    const row = { name: "cap", code: "a", covers: "basin top", share: 1, rock: "granite" };
    const worked = work({ ...stream, stones: [{ ...row, thickness: 0 }] });
    expect(worked.value("stones.measured[1]")).toBe(false);
    expect(worked.number("checks_failed")).toBe(1);
  });

  test.each([
    [8, 2400],
    [9, 1900],
    [10, 1900],
    [13.5, 1200],
    [14.5, 0],
  ])("at a reach of %f ft the chart allows %d lb", (reach, lift) => {
    const { number, value } = work({ ...stream, reach_needed: reach });
    expect(number("machine_lift")).toBe(lift);
    expect(value("machine_lifts")).toBe(number("load_on_hook") <= lift);
  });
});

describe("trees and walls", () => {
  const tree = (distance: number, fill: number, built = false) =>
    work({
      ...stream,
      trees: [{ name: "oak", trunk: 20, distance, fill_planned: fill, wall_built: built }],
    });

  test("outside the root zone any fill may lie", () => {
    expect(tree(20, 3).value("trees.wall_needed[1]")).toBe(false);
  });
  test("within it a few inches, at the trunk none", () => {
    expect(tree(10, 0.25).value("trees.wall_needed[1]")).toBe(false);
    expect(tree(10, 1).number("trees.fill_allowed[1]")).toBeCloseTo(0.25, 12);
    expect(tree(2, 0.1).number("trees.fill_allowed[1]")).toBe(0);
  });
  test("a wall across the root zone, 12 ft from a trunk of 20 in, is 32 ft long", () => {
    // half of it: the other side of a triangle of 20 and 12
    expect(tree(12, 2).number("trees.wall_length[1]")).toBeCloseTo(2 * 16, 9);
    expect(tree(12, 2).value("trees.kept[1]")).toBe(false);
    expect(tree(12, 2, true).value("trees.kept[1]")).toBe(true);
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
