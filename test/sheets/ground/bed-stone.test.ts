import { describe, expect, test } from "vitest";
import type { InputValues } from "../../../engine/job/record.js";
import { work } from "./bench.js";

const reach = (bed: string, length: number, width: number) => ({
  ...{ name: bed, length, width, bank_height: 1, bed },
});

/** Tons of a place by its name. */
function tonsOf(inputs: InputValues): (name: string) => number {
  const { model, value } = work(inputs);
  const rows = model.tables.get("stone_places")?.block.rows ?? 0;
  return (name) => {
    for (let row = 1; row <= rows; row++) {
      if (value(`stone_places.name[${row}]`) === name)
        return value(`stone_places.tons[${row}]`) as number;
    }
    throw new Error(`No place ${name}`);
  };
}

const mixed = [
  reach("gravel", 10, 3),
  reach("cobble", 20, 4),
  reach("cobble and boulders", 15, 5),
  reach("stone set in mortar", 6, 2),
];

describe("stone of the beds by hand, 6 in deep, field stone of 165 lb a cubic foot", () => {
  const tons = tonsOf({
    ...{ bed_stone_depth: 6, runs: mixed },
    pools: [{ name: "pool", length: 8, width: 5, depth: 1 }],
  });
  test.each([
    // area (the pool lies on gravel), depth, solid share by the table of beds, share of the place
    ["gravel in the bed", (10 * 3 + 8 * 5) * 0.5 * 0.62],
    ["cobble in the bed", 20 * 4 * 0.5 * 0.6],
    ["cobble between boulders in the bed", 15 * 5 * 0.5 * 0.65 * 0.6],
    ["boulders in the bed", 15 * 5 * 0.5 * 0.65 * 0.4],
    ["laid stone in the bed", 0],
    ["stone set in the bed's mortar", 6 * 2 * 0.5 * 0.65],
  ])("%s", (name, solid) => {
    expect(tons(name)).toBeCloseTo((solid * 165) / 2000, 9);
  });
});

test("mortar fills the voids of set stone, and a troweled bed is 2 in of it", () => {
  const { number } = work({
    ...{ bed_stone_depth: 6, runs: [mixed[3], reach("troweled mortar", 9, 4)] },
  } as InputValues);
  expect(number("bed_mortar")).toBeCloseTo(6 * 2 * 0.5 * 0.35 + (9 * 4 * 2) / 12, 9);
});

test("the depth of the bed's stone moves stone, dig and liner alike", () => {
  const at = (bed_stone_depth: number) =>
    work({ bed_stone_depth, channel_cut: 1, runs: [reach("cobble", 10, 3)] });
  const [thin, thick] = [at(4), at(8)];
  const cobble = (one: typeof thin) => one.number("stone_tons") - rest;
  const rest = at(0).number("stone_tons");
  expect(cobble(thin)).toBeCloseTo((10 * 3 * (4 / 12) * 0.6 * 165) / 2000, 9);
  expect(cobble(thick)).toBeCloseTo(2 * cobble(thin), 9);
  expect(thick.number("channel_dig")).toBeGreaterThan(thin.number("channel_dig"));
  expect(thick.number("liner_pieces.width[2]")).toBeGreaterThan(
    thin.number("liner_pieces.width[2]"),
  );
});

const failing = (inputs: InputValues) => {
  const { model, values } = work(inputs);
  return model.cells
    .filter(({ declaration, index }) => declaration.kind === "check" && values[index] === false)
    .map(({ name }) => name);
};
const cobble = {
  ...{ name: "cobble", stone: "cobble", covers: "stream bed", bed: "cobble" },
};

test.each([
  ["once", [cobble], false],
  ["half", [{ ...cobble, share: 0.5 }], true],
  ["by two halves", [cobble, cobble].map((row) => ({ ...row, share: 0.5 })), false],
  ["twice", [cobble, cobble], true],
  ["not at all", [{ ...cobble, bed: "gravel" }], true],
])("a bed of cobble bought %s", (_, stone_places, fails) => {
  const found = failing({ runs: [reach("cobble", 10, 3)], stone_places });
  expect(found.includes("beds_bought.bed_bought")).toBe(fails);
});

// The boulders of the bed are 18 in long: 4 in of bed stone and banks of 9 in leave 5 in above them.
test.each([
  ["9 in", 0.75, 4, false],
  ["13 in", 13 / 12, 4, false],
  ["15 in", 1.25, 4, true],
  ["9 in, in a bed 10 in deep", 0.75, 10, true],
])("boulders 18 in long between banks of %s", (_, bank_height, bed_stone_depth, holds) => {
  const runs = [{ ...reach("cobble and boulders", 15, 5), bank_height }, reach("gravel", 9, 4)];
  const { model, value } = work({ bed_stone_depth, runs });
  const rows = model.tables.get("stone_places")?.block.rows ?? 0;
  const row = Array.from({ length: rows }, (_, i) => i + 1).find(
    (at) => value(`stone_places.name[${at}]`) === "boulders in the bed",
  );
  expect(value(`stone_places.bed_holds_stone[${row}]`)).toBe(holds);
});
