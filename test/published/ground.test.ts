import { describe, expect, test } from "vitest";
import { number, type Quantity, weight } from "../../engine/template/index.js";
import { excavationSlopes } from "../../sheets/tables/excavation.js";
import { soils } from "../../sheets/tables/soils.js";
import { voids } from "../../sheets/tables/voids.js";
import {
  soilVolume,
  vaporPressure,
  waterLoss,
  waterVolume,
} from "../../sheets/vocabulary/quantities.js";
import { stream, unprotected, work } from "../sheets/ground/bench.js";
import { figure } from "../sheets/ground/figure.js";

describe("named formulas against published figures", () => {
  const cases: [what: string, formula: string, Quantity, published: number, within: number][] = [
    // NIOSH 94-110, lift H 15, V 15, D 20, A 0, FM 1, CM 0.95
    [
      "a recommended weight limit of 26.1 lb",
      "LIFT_LIMIT(51[lb], 15[in], 15[in], 20[in], 0[°], 1, 0.95)",
      weight,
      26.1,
      0.002,
    ],
    // NIOSH 94-110: the best posture leaves the load constant whole
    [
      "the load constant",
      "LIFT_LIMIT(51[lb], 10[in], 30[in], 10[in], 0[°], 1, 1)",
      weight,
      51,
      1e-9,
    ],
    // ASHRAE Transactions 104 (1998): W = (95 + 0.425 v)(pw - pa)/Y; pw, pa, Y from memory
    [
      "evaporation of 1.50 in a week from still air",
      "EVAPORATION(0[ft/s], 1.032[inHg], 0.522[inHg], 1048[Btu/lb], 1)*7",
      waterLoss,
      1.5,
      0.005,
    ],
    // the same at the 74% measured on quiet water
    [
      "evaporation of 1.11 in a week from quiet water",
      "EVAPORATION(0[ft/s], 1.032[inHg], 0.522[inHg], 1048[Btu/lb], 0.74)*7",
      waterLoss,
      1.11,
      0.005,
    ],
    // steam tables (from memory): 1.032 inHg at 80 °F, 0.522 inHg at 60 °F
    ["vapor pressure at 80 °F", "VAPOR_PRESSURE((80-32)/1.8)", vaporPressure, 1.032, 0.005],
    ["vapor pressure at 60 °F", "VAPOR_PRESSURE((60-32)/1.8)", vaporPressure, 0.522, 0.005],
    // an inch of rain on a square foot: 0.62338 gal, from 7.48052 gal in a cubic foot
    ["an inch of rain", "1[in]*1[ft²]", waterVolume, 0.62338, 1e-5],
    // spheres at 165 lb/ft³: 691 lb at 24 in, 2,333 lb at 36 in, by pi d³/6
    [
      "a boulder of 24 in",
      "STONE_WEIGHT(2[ft], 2[ft], 2[ft], PI()/6, 165[lb/ft³])",
      weight,
      691,
      0.001,
    ],
    [
      "a boulder of 36 in",
      "STONE_WEIGHT(3[ft], 3[ft], 3[ft], PI()/6, 165[lb/ft³])",
      weight,
      2333,
      0.001,
    ],
    // porosity tests of a maker of stormwater chambers: No. 57 dumped, 45.4% and 87.2 lb/ft³
    ["No. 57 stone in bulk", "STONE_TONS(1[ft³], 45.4%, 159.7[lb/ft³])", weight, 87.2, 0.001],
    // the same: No. 4 compacted, 37.4% and 103.0 lb/ft³
    ["No. 4 stone in bulk", "STONE_TONS(1[ft³], 37.4%, 164.5[lb/ft³])", weight, 103, 0.001],
    // FHWA Federal Lands Highway PDDM 9.4.C: 25% is 0.80; the ordinary form: 0.75
    ["a shrink of 25%, FHWA", "COMPACTED_FACTOR(25%, 1)", number, 0.8, 1e-12],
    ["a shrink of 25%, ordinary", "COMPACTED_FACTOR(25%, 0)", number, 0.75, 1e-12],
    // 27 ft³ in a yard; upright sides
    ["a yard dug", "PRISMOID(3[ft], 3[ft], 3[ft], 0)", soilVolume, 1, 1e-12],
  ];
  test.each(cases)("%s", (_, formula, quantity, published, within) => {
    expect(Math.abs(figure(formula, quantity) / published - 1)).toBeLessThanOrEqual(within);
  });
});

describe("published tables", () => {
  // Army FM 5-434 Table 1-1: bank, loose, compacted (sand read; earth and clay from memory)
  test.each([
    ["sand", 1.11, 0.95],
    ["common earth", 1.25, 0.9],
    ["clay", 1.43, 0.9],
  ])("%s: 1 yd³ in the bank is %f loose and %f compacted", (soil, loose, compacted) => {
    const { number: found } = work({ ...stream, soil_kind: soil });
    expect(found("loose_factor")).toBeCloseTo(loose, 10);
    expect(found("compacted_factor")).toBeCloseTo(compacted, 10);
  });

  // ranges of swell in Peurifoy, Construction Planning, Equipment and Methods, Table 4-1
  test.each([
    ["sand", 0.05, 0.15],
    ["common earth", 0.2, 0.45],
    ["clay", 0.3, 0.6],
    ["blasted rock", 0.5, 0.8],
  ])("the swell of %s lies within a second book's range", (name, least, most) => {
    const swell = soils.find((soil) => soil.name === name)?.swell;
    expect(swell).toBeGreaterThanOrEqual(least);
    expect(swell).toBeLessThanOrEqual(most);
  });

  // 29 CFR 1926 Subpart P App. B Table B-1: each slope with its angle
  test.each([
    ["type A", 53],
    ["type B", 45],
    ["type C", 34],
    ["not classified", 34],
    ["stable rock", 90],
  ])("the slope in %s stands at %d degrees", (name, degrees) => {
    const run = excavationSlopes.find((slope) => slope.name === name)?.run ?? Number.NaN;
    const angle = (Math.atan2(1, run) * 180) / Math.PI;
    expect(Math.round(angle)).toBe(degrees);
  });

  // a stormwater manual first printed "void ratio 0.4", then corrected it to porosity
  test("a porosity of 0.40 is a void ratio of 0.667", () => {
    const { number: found } = work(stream);
    expect(voids[0].porosity).toBe(0.4);
    expect(found("stone_void_ratio")).toBeCloseTo(0.667, 3);
  });
});

describe("worked examples", () => {
  // general engineering page: 200 bank at 40% swell is 280 loose; a fill of 90 compacted at 10%
  // shrink takes 100 bank, which leaves 140 loose to haul
  test("200 yd³ dug and 90 yd³ of berm leave 140 yd³ to haul", () => {
    const { number: found } = work({
      own_swell: 0.4,
      own_shrink: 0.1,
      ...{
        working_room: 0,
        basin_bedding: 0,
        channel_cut: 0,
        main_length: 0,
        fill_line_length: 0,
        strip_depth: 0,
      },
      ...{ basin_length: 30, basin_width: 20, basin_depth: 9 },
      berms: [{ name: "all", length: 2430 / 5.25, height: 3, top: 1, slope: 0.25, end_slope: 0 }],
    });
    expect(found("fill_on_site")).toBeCloseTo(200, 8);
    expect(found("berm_volume")).toBeCloseTo(90, 8);
    expect(found("dirt_used")).toBeCloseTo(100, 8);
    expect(found("haul_volume")).toBeCloseTo(140, 8);
    expect(found("import_volume")).toBe(0);
  });

  // University of Minnesota SULIS: width + 2 x greatest depth + 1 ft
  test("liner across a stream 4 ft wide and 1.5 ft deep is 8 ft", () => {
    const { number: found } = work({
      channel_allowance: 0,
      bed_stone_depth: 0,
      runs: [{ name: "reach", length: 10, width: 4, side: 0, bank_height: 1.5 }],
    });
    expect(found("liner_pieces.width[2]")).toBeCloseTo(8, 12);
  });

  // municipal backflow rules: twice the bore of the supply, 1 in at least
  test.each([
    [0.75, 1.5],
    [0.375, 1],
    [1, 2],
  ])("a fill line of %f in needs a gap of %f in", (bore, gap) => {
    const low = work({ ...stream, fill_line_bore: bore, air_gap: gap - 0.01 });
    expect(low.number("air_gap_needed")).toBeCloseTo(gap, 12);
    expect(low.value("air_gap_enough")).toBe(false);
    expect(work({ ...stream, fill_line_bore: bore, air_gap: gap }).value("air_gap_enough")).toBe(
      true,
    );
  });

  // 29 CFR 1926.652(a)(1), .651(c)(2), .651(j)(2)
  test.each([
    ["4.9 ft deep, no signs", { basin_depth: 4.9, basin_bedding: 0, ladders_brought: 1 }, true],
    ["5 ft deep, upright", { basin_depth: 5, basin_bedding: 0 }, false],
    ["3 ft deep, signs of a cave-in", { basin_depth: 3, cave_in_signs: "signs" }, false],
    ["5 ft deep in stable rock", { basin_depth: 5, dig_soil_type: "stable rock" }, true],
    ["5 ft deep, shored", { basin_depth: 5, dig_protection: "shored or shielded" }, true],
    ["sloped 1 to 1, not classified", { ...deep("sloped"), dig_slope: 1 }, false],
    ["sloped 1.5 to 1, not classified", { ...deep("sloped"), dig_slope: 1.5 }, true],
    ["sloped 1 to 1 in type B", { ...deep("sloped"), dig_slope: 1, dig_soil_type: "type B" }, true],
    ["slope given but not chosen", { basin_depth: 6, dig_slope: 2 }, false],
    [
      "a deep trench beside a sloped basin",
      { ...deep("sloped"), dig_slope: 2, trench_depth: 60 },
      false,
    ],
  ])("a dig %s", (_, inputs, safe) => {
    expect(unprotected(work({ ...stream, ...inputs })).length === 0).toBe(safe);
  });

  test.each([
    [47, 100, 0],
    [48, 50, 1],
    [48, 50.1, 2],
    [60, 101, 3],
  ])("a trench %f in deep and %f ft long needs %d ladders", (depth, long, ladders) => {
    const inputs = { trench_depth: depth, main_length: long, basin_depth: 3 };
    expect(work({ ...stream, ...inputs }).number("ladders_needed")).toBe(ladders);
  });

  // IRC R105.2: 4 ft from the bottom of the footing, no load behind
  test.each([
    [3.4, false, true],
    [3.6, false, false],
    [2, true, false],
  ])(
    "a wall %f ft above ground, loaded %s, stands without a permit: %s",
    (height, loaded, fine) => {
      const walls = [{ name: "wall", length: 20, height, loaded, arranged: false }];
      expect(work({ ...stream, walls }).value("walls.permitted[1]")).toBe(fine);
      const arranged = walls.map((wall) => ({ ...wall, arranged: true }));
      expect(work({ ...stream, walls: arranged }).value("walls.permitted[1]")).toBe(true);
    },
  );
});

function deep(protection: string) {
  return { basin_depth: 6, dig_protection: protection };
}
