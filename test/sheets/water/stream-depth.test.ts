import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { valuesOf } from "../../../engine/book/values.js";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import { saidBy } from "../../../engine/evaluate/said-by.js";
import type { JobRecord } from "../../../engine/job/record.js";
import { compile } from "../../../engine/template/compile.js";
import { calc, smallLength } from "../../../engine/template/index.js";
import type { Cell } from "../../../engine/template/model.js";
import { depthSearch } from "../../../sheets/parts/stream/depth-search.js";
import { type Answers, answersOf, water } from "../../support/water.js";
import { pump, yardPumps } from "../../support/water-jobs.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const beds = [
  "troweled mortar",
  "stone set in mortar",
  "gravel",
  "laid stone, dry",
  "cobble",
  "cobble and boulders",
];

const reach = fc.record({
  length: between(0.5, 200),
  width: between(0.25, 60),
  fall: between(0.01, 20),
  side: fc.oneof(fc.constant(0), between(0, 6)),
  bed: fc.constantFrom(...beds),
});
type Reach = typeof reach extends fc.Arbitrary<infer T> ? T : never;

/** A job of one run and one outlet that brings about `gallons` a minute. */
function run(one: Partial<Reach>, gallons: number, rest: object = {}): Answers {
  return answersOf(
    {
      falls: [{ name: "Fall", level: 1, width: 4, drop: 1 }],
      runs: [{ name: "Run", after_level: 1, length: 10, ...one }],
      pipe_lines: [
        {
          name: "One",
          outlet_level: 1,
          pipe_size: "6 in",
          override_flow: gallons,
          measured_height: 1,
        },
      ],
      main_size: "6 in",
      main_length: 10,
      pump_choice: "P",
      ...rest,
    },
    [
      pump("P", [
        [0, 60],
        [1000, 55],
        [2500, 40],
      ]),
    ],
    { fast: true },
  );
}

/** Flow in ft³/s by Ferguson's law, written anew: depth, width and stone in ft. */
function flowAt(depth: number, one: Reach, stone: number, slope: number): number {
  const area = one.width * depth + one.side * depth * depth;
  const edge = one.width + 2 * Math.hypot(depth, one.side * depth);
  const times = area / edge / stone;
  const resistance = (6.5 * 2.5 * times) / Math.hypot(6.5, 2.5 * times ** (5 / 6));
  return area * Math.sqrt(32.174 * (area / edge) * slope) * resistance;
}

/** The depth in ft that carries a flow, by halving. */
function depthByHalving(flow: number, one: Reach, stone: number, slope: number): number {
  let [low, high] = [0, 100_000];
  for (let i = 0; i < 100; i += 1) {
    const middle = (low + high) / 2;
    if (flowAt(middle, one, stone, slope) < flow) low = middle;
    else high = middle;
  }
  return low;
}

describe("any run", () => {
  test("its depth is that found by halving, and its check says so", () => {
    fc.assert(
      fc.property(reach, between(1, 1500), (one, gallons) => {
        const answers = run(one, gallons);
        const flow = answers.number("runs.flow", 1) / 448.831;
        const depth = depthByHalving(
          flow,
          one,
          answers.number("runs.stone_size", 1) / 12,
          answers.number("runs.slope", 1),
        );
        const found = answers.number("runs.depth_likely", 1) / 12;
        expect(Math.abs(found / depth - 1)).toBeLessThan(1e-5);
        expect(answers.yes("runs.depth_settled", 1)).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  test("runs deeper with more flow, more stone and less slope", () => {
    const depth = (one: Reach, gallons: number) => run(one, gallons).number("runs.depth_likely", 1);
    fc.assert(
      fc.property(reach, between(5, 1000), (one, gallons) => {
        const basis = depth({ ...one, bed: "gravel" }, gallons);
        expect(depth({ ...one, bed: "gravel" }, gallons * 1.02)).toBeGreaterThan(basis);
        expect(depth({ ...one, bed: "cobble" }, gallons)).toBeGreaterThan(basis);
        const flat = { ...one, bed: "gravel", fall: one.fall * 0.9 };
        expect(depth(flat, gallons)).toBeGreaterThanOrEqual(basis * (1 - 1e-9));
      }),
      { numRuns: 40 },
    );
  });
});

describe("shallow and deep", () => {
  const gap = (one: Partial<Reach>, gallons: number) => {
    const answers = run(one, gallons);
    return answers.number("runs.depth_manning", 1) / answers.number("runs.depth_likely", 1);
  };

  test("deep over small stone, both laws give one depth", () => {
    expect(gap({ bed: "troweled mortar", width: 1, fall: 0.01, length: 50 }, 1500)).toBeCloseTo(
      1,
      2,
    );
  });

  test("over cobble an inch or two deep, Manning gives less than half of it", () => {
    expect(gap({ bed: "cobble", width: 3, fall: 0.5 }, 60)).toBeLessThan(0.5);
  });

  // a roughness layer: speed goes with depth^(3/2), so depth with flow^(2/5)
  test("four times the flow over boulders: 4^(2/5) times the depth", () => {
    const depth = (gallons: number) =>
      run({ bed: "cobble and boulders", width: 60, fall: 0.5, side: 0 }, gallons).number(
        "runs.depth_likely",
        1,
      );
    expect(depth(200) / depth(50) / 4 ** 0.4).toBeCloseTo(1, 2);
  });
});

describe("the allowance on depth", () => {
  const one = { bed: "cobble", width: 3, fall: 0.5, side: 1, bank_height: 0.45 };
  const calculated = run(one, 100, { depth_allowance: 0 });
  const cautious = run(one, 100);

  test("0 % plans for the depth calculated, half of it is what a bid starts from", () => {
    const depth = calculated.number("runs.depth_likely", 1);
    expect(calculated.number("runs.depth", 1)).toBe(depth);
    expect(cautious.number("runs.depth", 1)).toBeCloseTo(1.5 * depth, 9);
    expect(cautious.number("runs.speed", 1)).toBe(calculated.number("runs.speed", 1));
  });

  test("raises the water held by the area of that depth", () => {
    const area = (depth: number) => (3 + depth) * depth;
    const depth = calculated.number("runs.depth", 1) / 12;
    expect(cautious.number("run_water") / calculated.number("run_water")).toBeCloseTo(
      area(1.5 * depth) / area(depth),
      9,
    );
    expect(cautious.number("stream_water")).toBeGreaterThan(calculated.number("stream_water"));
    expect(cautious.number("stream_surface")).toBeGreaterThan(calculated.number("stream_surface"));
  });

  test("asks for higher banks", () => {
    expect(calculated.yes("runs.banks_hold", 1)).toBe(true);
    expect(cautious.yes("runs.banks_hold", 1)).toBe(false);
    expect(cautious.said("runs.banks_hold", 1)).toMatch(/allowance included/);
  });
});

describe("checks of the depth", () => {
  test("two laws more than 15 % apart in deep water are told", () => {
    const apart = run({ bed: "gravel", width: 6, side: 0, fall: 0.05 }, 1500);
    expect(apart.yes("runs.laws_agree", 1)).toBe(false);
    expect(apart.said("runs.laws_agree", 1)).toMatch(/by Manning, over 15 % apart/);
    const near = run({ bed: "troweled mortar", width: 6, fall: 0.05 }, 1500);
    expect(near.yes("runs.laws_agree", 1)).toBe(true);
  });

  test("a run without water has no depth and no fault", () => {
    const dry = run({ bed: "cobble" }, 0, { pipe_lines: [] });
    expect(dry.number("runs.depth", 1)).toBe(0);
    for (const check of ["depth_settled", "laws_agree", "banks_hold"]) {
      expect(dry.yes(`runs.${check}`, 1)).toBe(true);
    }
  });
});

test("a depth that somebody typed over does not carry the flow, and the check says so", () => {
  const depth_fourth = calc(smallLength, "1[in]", "Typed over");
  const sheets = water.sheets.map((sheet) => ({
    ...sheet,
    blocks: sheet.blocks.map((block) =>
      block.kind === "table" && block.name === depthSearch.name
        ? { ...block, columns: { ...block.columns, depth_fourth } }
        : block,
    ),
  }));
  const model = compile({ ...water, sheets }, "us");
  const inputs = {
    falls: [{ name: "Fall", level: 1, width: 4, drop: 1 }],
    runs: [{ name: "Run", after_level: 1, length: 10 }],
    pipe_lines: [{ name: "One", outlet_level: 1, pipe_size: "2 in" }],
    pump_choice: "V",
  };
  const job = { rillbook: 1, job: "test", template: "water", version: 1, units: "us", inputs };
  const book = {
    name: "test",
    asOf: "2026-11-01",
    mark: "",
    tables: { pumps: yardPumps, places: [] },
  };
  const values = calculateFast(model, valuesOf(model, job as JobRecord, book));
  const at = (id: string) => values[model.byId.get(id)?.index ?? -1];
  expect(at("runs.depth_settled[1]")).toBe(false);
  const said = saidBy(model, model.byId.get("runs.depth_settled[1]") as Cell, values);
  expect(said).toMatch(/does not carry the flow/);
});
