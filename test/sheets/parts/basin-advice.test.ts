import { expect, test } from "vitest";
import type { Value } from "../../../engine/formula/value.js";
import { type Changes, changedDemo, demoRows, shown } from "../../support/changed-demo.js";

/** The length that a basin too large or too small is told: whole crates, and room for vaults and a crate. */

const one = (table: string, changed: Changes) => ({
  [table]: [{ ...demoRows(table)[0], ...changed }],
});
const small = {
  ...one("falls", { width: 1.5, drop: 1, level: 1 }),
  ...one("runs", { length: 3, width: 1.5, after_level: 1 }),
  ...one("pipe_lines", { outlet_level: 1 }),
  ...{ pools: [], pots: [], berms: [] },
};

const number = (values: readonly Value[], id: string) => Number(shown(values, id));

test.each<[string, Changes]>([
  ["large job, large basin", { basin_length: 30, basin_width: 15 }],
  ["small job, large basin", { ...small, basin_length: 20, basin_width: 6 }],
  ["large job, small basin", { basin_length: 6, basin_width: 8 }],
])("%s", (_, changed) => {
  const values = changedDemo(changed);
  const told = number(values, "basin_length_enough");
  const columns = (told * 12 - 2 * number(values, "crate_gap")) / number(values, "crate_along");
  expect(columns).toBeCloseTo(Math.round(columns), 6);
  expect(columns).toBeGreaterThanOrEqual(number(values, "columns_usable"));
  const followed = changedDemo({ ...changed, basin_length: Math.ceil(told * 100) / 100 });
  for (const check of ["basin_holds", "basin_not_oversize", "vault_fits", "crates_fit"]) {
    expect([check, shown(followed, check)]).toEqual([check, true]);
  }
});

test("no basin is called too large that is as short as vaults and one crate allow", () => {
  const shortest = number(changedDemo({ ...small, basin_length: 20 }), "columns_usable");
  const values = changedDemo({
    ...small,
    basin_length: (8 + shortest * 27) / 12 + 0.01,
    basin_depth: 6,
  });
  expect(number(values, "basin_water_held")).toBeGreaterThan(
    2 * number(values, "basin_water_needed"),
  );
  expect(shown(values, "basin_not_oversize")).toBe(true);
});
