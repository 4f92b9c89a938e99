import { describe, expect, test } from "vitest";
import { work } from "./bench.js";

const lines = {
  ...{ main_length: 30, fill_line_length: 40, pipe_lines: [{ length: 12 }, { length: 18 }] },
};

describe("trenches by hand: main 30 ft, lines 12 and 18 ft, fill line 40 ft", () => {
  const { number, value } = work({ ...lines, pipe_water: 37.4 });

  test("pipes 12 in wide and 24 in deep, the fill line 6 by 12 in", () => {
    const dug = ["main", "lines", "fill line"].map((_, i) => number(`trenches.dug[${i + 1}]`));
    expect(dug).toEqual([30, 30, 40]);
    expect(number("trench_volume")).toBeCloseTo((60 * 1 * 2 + 40 * 0.5 * 1) / 27, 9);
    expect(number("trench_length")).toBe(60);
  });

  test("4 in of bedding lies under the pipes and is bought as sand, with that of the basin", () => {
    expect(number("trench_bedding")).toBeCloseTo((60 * 1 * (4 / 12)) / 27, 9);
    const row = [1, 2, 3, 4, 5].find(
      (at) => value(`earthwork_buys.what[${at}]`) === "bedding sand",
    );
    expect(value(`earthwork_buys.code[${row}]`)).toBe("sand-bedding");
    expect(number(`earthwork_buys.wanted[${row}]`)).toBeCloseTo(
      20 / 27 + number("bedding_volume"),
      9,
    );
  });

  test("filled again compacted: 0.9 of a bank yard, so that bedding and pipes leave less over", () => {
    // 37.4 gallons are 5 cubic feet
    const filled = 60 * 1 * 2 + 40 * 0.5 * 1 - 20 - (37.4 * 231) / 1728;
    expect(number("trench_spare")).toBeCloseTo((140 - filled / 0.9) / 27, 9);
    expect(number("fill_on_site")).toBeCloseTo(number("dig_volume") + number("trench_spare"), 9);
  });
});

test.each([
  ["as deep as the plain rate holds", 36, 12, 3, 1],
  ["5 ft deep", 60, 12, 5, 1.2],
  ["5 ft deep and 2 ft wide", 60, 24, 10, 1.2],
])("hours go by volume and depth: %s", (_, depth, width, section, factor) => {
  const { number } = work({ ...lines, trench_depth: depth, trench_width: width });
  expect(number("trench_effort")).toBeCloseTo((60 * section * factor) / 27, 9);
  // the fill line keeps its own
  expect(number("narrow_effort")).toBeCloseTo((40 * 0.5) / 27, 9);
});

test("a line in the trench of another is not dug twice, nor bedded", () => {
  const { number } = work({
    ...lines,
    trenches: [{}, { shared: true }, { chosen: 10 }],
  });
  expect(number("trench_volume")).toBeCloseTo((30 * 2 + 10 * 0.5) / 27, 9);
  expect(number("trench_bedding")).toBeCloseTo((30 * (4 / 12)) / 27, 9);
  expect(number("trenches.open_depth[1]")).toBe(24);
});

test("a trench that others dig costs no digging, and is as deep to go into", () => {
  const trenches = [{ shared: true, depth: 66 }];
  const { number, value } = work({ ...lines, trenches });
  expect(number("trenches.dug[1]")).toBe(0);
  expect(number("deepest_dig")).toBeCloseTo(5.5, 9);
  expect(value("deepest_place")).toBe("Trench of main");
  expect(value("digs.protected[2]")).toBe(false);
  expect(number("ladders_needed")).toBe(1);
  // a pipe on the ground has no trench
  const laid = work({ ...lines, trenches: [{ chosen: 0, depth: 66 }] });
  expect(laid.value("deepest_place")).toBe("Basin");
});

test("the conduit lies under 18 in of cover: NEC Table 300.5 (from memory)", () => {
  const { number } = work({ ...lines, conduit_trench: 20 });
  expect(number("trenches.deep[4]")).toBeGreaterThanOrEqual(18 + 1.315);
});

test("bedding as deep as its trench fails a check", () => {
  const trenches = [{ bedding: 24 }];
  expect(work({ ...lines, trenches }).value("trenches.holds_bedding[1]")).toBe(false);
  expect(work(lines).value("trenches.holds_bedding[1]")).toBe(true);
});
