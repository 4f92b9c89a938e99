import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import type { Value } from "../../../engine/formula/value.js";
import type { Model } from "../../../engine/template/model.js";
import { changedDemo, firstRow, pagesAfter, shown } from "../../support/changed-demo.js";
import { bidOf, demoFolder } from "../../support/demo.js";
import { linesOf, pageCells } from "../../support/page-cells.js";

// What the customer reads: what stands open is named, figures behind "about" are round, and words fit their count.

const hillside = (changed: Record<string, unknown> = {}) => pagesAfter(changed).proposal.join("\n");

describe("a figure behind the word about has two digits", () => {
  test.each([
    ["basin_water_held", "basin_water_about", 2400],
    ["heaviest_stone", "heaviest_about", 870],
    ["energy_cost_a_year", "energy_year_about", 410],
    ["loss_a_day", "loss_about", 77],
    ["lawn_area", "lawn_about", 0],
  ])("%s", (exact, about, round) => {
    const values = changedDemo({});
    expect(shown(values, about)).toBeCloseTo(round, 9);
    expect(Math.abs(Number(shown(values, exact)) - round)).toBeLessThanOrEqual(0.05 * round);
  });
});

test("pools are named in the opening, and again in the drawing", () => {
  expect(hillside()).toContain(
    "On its way it stands open in Mirror pool, about 7 ft by 5 ft and up to 1 ft 4 in deep, and in Spring pool, about 3 ft by 2 ft 6 in and up to 1 ft 3 in deep.",
  );
  expect(hillside({ pools: [] })).not.toContain("stands open");
  const values = changedDemo({});
  expect(shown(values, "course.pool_said[3]")).toBe("Mirror pool");
  expect(shown(values, "course.pool_said[1]")).toBe("Spring pool");
  expect(shown(values, "course.pool_said[2]")).toBe(" ");
});

test("lips of one level are one fall of the drawing, and said to stand side by side", () => {
  expect(shown(changedDemo({}), "course.said[2]")).toBe(
    "Split fall, left and Split fall, right: 2 ft",
  );
  expect(hillside().match(/: one of 2 lips side by side, /g)).toHaveLength(2);
  expect(hillside()).toContain("•  Spring fall: a fall 3 ft wide");
});

test("a basin that a line ends in is told with its depth", () => {
  expect(hillside(firstRow("pipe_lines", { pot_surface: 6, pot_depth: 14 }))).toContain(
    "•  Spring: here the water rises in a small open basin of about 6 square feet, up to 14 in deep.",
  );
});

test("the price says which permits are in it, where none is", () => {
  expect(hillside()).toContain(
    "No permit is in the price but what the electrician's quote covers.",
  );
  expect(hillside({ electrical_work: "by the customer", subcontracts: [] })).toContain(
    "No permit is in the price.",
  );
  expect(hillside({ permits_needed: 1 })).not.toContain("No permit");
});

test("what the days without a fill mean depends on the fill line", () => {
  expect(hillside()).toContain(
    "if the automatic fill ever fails, it runs about 16 days in warm weather.",
  );
  expect(hillside({ fill_line_length: 0 })).toContain(
    "enough for about 16 days of warm weather between two fillings.",
  );
});

test("children are spoken of once, with the depth of what stands open", () => {
  const about = (changed: Record<string, unknown>) =>
    hillside(changed).match(/^.*small child.*$/gm) ?? [];
  expect(about({})).toEqual([
    "A child can drown in 2 in of water; here it stands up to 1 ft 4 in deep: never leave small children alone near it. Local rules may ask for a barrier.",
  ]);
  const deep = {
    pools: [
      { name: "Deep pool", before_level: 3, length: 7, width: 5, depth: 3, barrier_planned: true },
    ],
  };
  expect(about(deep)).toHaveLength(1);
  expect(hillside(deep).match(/barrier/g)).toHaveLength(1);
});

test("lawn that is worn is spoken of in one place", () => {
  expect(hillside().match(/[Ll]awn/g)).toHaveLength(1);
  expect(hillside({ lawn_share: 1 })).not.toContain("not repaired in this price");
});

describe("one fall with one line", () => {
  let model: Model;
  let values: readonly Value[];
  beforeAll(async () => {
    ({ model, values } = await bidOf(join(demoFolder, "garden-corner.json")));
  }, 120_000);
  const page = (name: "proposal" | "handOver") =>
    pageCells(model, name)
      .flatMap((cell) => linesOf(cell, String(values[cell.index] ?? "")))
      .join("\n");

  test("has no falls and no valves", () => {
    expect(page("proposal")).toContain("over the fall, always the same water");
    expect(page("proposal")).toContain("to the fall, with a valve to set the flow.");
    expect(page("proposal")).not.toMatch(/falls\b/);
  });

  test("is handed over with its warranty, a telephone, and no lights", () => {
    expect(page("handOver")).toMatch(/■ Warranty\nAs agreed: one year/);
    expect(page("handOver")).toMatch(/■ Call us when\n• {2}The level falls/);
    expect(page("handOver")).toContain("•  Telephone: 555-0100");
    expect(page("handOver")).not.toMatch(/lights/);
  });

  test("is paid for last when it is complete", () => {
    expect(page("proposal")).toMatch(
      /on completion, after the walk-through with you: \$1,515, 10%/,
    );
  });
});
