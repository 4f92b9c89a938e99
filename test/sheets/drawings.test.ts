import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import type { Value } from "../../engine/formula/value.js";
import { type ChartBlock, chartsOf, isBar } from "../../engine/template/chart.js";
import { columnOf, type Model } from "../../engine/template/model.js";
import { strokes } from "../../engine/workbook/write/charts/looks.js";
import { capacity } from "../../sheets/parts/capacity.js";
import { waterfall } from "../../sheets/templates/waterfall.js";
import { type Changes, changedDemo, demoRows, shown } from "../support/changed-demo.js";
import { bidOf, demoFolder } from "../support/demo.js";

const all: ChartBlock[] = waterfall.sheets.flatMap(({ blocks }) =>
  blocks.flatMap((block) => (block.kind === "chart" ? [...chartsOf(block)] : [])),
);

test("every chart says in words what it shows", () => {
  for (const { heading, alt = "" } of all) expect(alt.length, heading).toBeGreaterThan(40);
});

describe("in gray", () => {
  const pairs = all
    .filter(({ series }) => !series.every(isBar))
    .map(({ heading, series }) => {
      const listed = series.filter(({ marks, legend }) => marks === "line" && legend !== false);
      return [heading, listed.map(({ look }) => look)] as const;
    });
  test.each(pairs)("the lines of %s differ by weight or dash", (_, looks) => {
    const drawn = looks.map((look) => {
      const { weight, dash } = strokes[look ?? "plain"];
      return `${dash} ${weight}`;
    });
    expect(looks).not.toContain(undefined);
    expect(new Set(drawn).size).toBe(drawn.length);
  });
});

describe("what the drawings show is what the sheets calculate", () => {
  let model: Model;
  let values: readonly Value[];
  beforeAll(async () => {
    ({ model, values } = await bidOf(join(demoFolder, "hillside-stream.json")));
  }, 120_000);
  const number = (name: string) => Number(values[model.byId.get(name)?.index as number]);
  /** The course is drawn over the rim of the basin, as the crew measures; heights for the pump are over its water. */
  const rim = () => number("rim_above_water") / 12;
  const column = (table: string, key: string) =>
    columnOf(model, table, key).cells.map(({ index }) => Number(values[index]));

  test("the water falls from the top level to the end of the stream", () => {
    const water = column("course_points", "water");
    expect(water[0]).toBeCloseTo(number("total_drop") - rim(), 9);
    expect(water.at(-1)).toBeCloseTo(0, 9);
    expect(water.every((up, i) => i === 0 || up <= (water[i - 1] as number) + 1e-9)).toBe(true);
  });

  test("the name of a fall stands above the banks on either side of its lip", () => {
    const [up, top, bank] = ["said_up", "top", "bank"].map((key) => column("course", key));
    const [drop, height] = [column("levels", "drop"), number("said_height")];
    const used = column("levels", "design_flow").filter((flow) => flow > 0).length;
    expect(used).toBeGreaterThan(2);
    const feet = Array.from({ length: used }, (_, i) => (up?.[i] as number) - height / 2);
    feet.forEach((foot, i) => {
      const banks = (top?.[i] as number) + (bank?.[i] as number);
      expect(foot).toBeGreaterThanOrEqual(banks - 1e-9);
      expect(foot).toBeGreaterThan(banks - (drop[i] as number));
    });
    // of the height of the drawing a name in letters of 9 points takes no more
    expect(height).toBeGreaterThan(0.1 * (number("course_up") - number("course_bottom")));
  });

  test("the customer's drawing is to scale, and has no axis to be read", () => {
    const customers = all.filter(({ heading }) => heading.startsWith("Your stream"));
    expect(customers.map(({ without, ratio }) => [without, ratio !== undefined])).toEqual([
      [["across", "up"], true],
    ]);
  });

  test("the stream is as long as its runs and pools", () => {
    const along = column("course_points", "along");
    const length = (along.at(-1) as number) - number("course_lead");
    expect(length).toBeCloseTo(number("stream_length"), 9);
    expect(along.every((at, i) => i === 0 || at >= (along[i - 1] as number) - 1e-9)).toBe(true);
  });

  test("the bed lies under the water, and the banks over it", () => {
    const [water, bed, bank] = ["water", "bed", "bank"].map((key) => column("course_points", key));
    for (let i = 0; i < capacity.falls * 5; i++) {
      expect(bed?.[i]).toBeLessThan(water?.[i] as number);
      expect(bank?.[i]).toBeGreaterThan(water?.[i] as number);
    }
  });

  test("heights at the lips are those of the levels", () => {
    const [top, height] = [column("course", "top"), column("levels", "height")];
    for (const level of [0, 1, 2]) {
      expect(top[level]).toBeCloseTo((height[level] as number) - rim(), 9);
    }
  });

  test("the pipe rises to the highest outlet", () => {
    expect(column("course_pipe", "up").at(-1)).toBeCloseTo(
      Math.max(...column("pipe_lines", "height")) - rim(),
      9,
    );
  });

  test("the plan has a line before and after each column and row of crates, within the basin", () => {
    const distinct = (table: string, key: string) =>
      new Set(column(table, key).map((at) => at.toFixed(6))).size;
    expect(distinct("plan_crates", "along")).toBe(number("crate_columns") + 1);
    expect(distinct("plan_crates", "across")).toBe(number("crate_rows") + 1);
    expect(Math.max(...column("plan_crates", "along"))).toBeLessThanOrEqual(number("basin_length"));
    expect(Math.max(...column("plan_vaults", "across"))).toBeLessThanOrEqual(number("basin_width"));
  });

  test("the names of the plan stand beside its walls, over no crate, and the drawing has room for them", () => {
    const { series } = all.find(({ heading }) => heading === "Basin in plan") as ChartBlock;
    const said = series.filter(({ marks }) => marks === "names");
    expect(said.map(({ label }) => label)).toEqual(["Stone", "Crates", "Vault"]);
    for (const { label, x, y } of said) {
      const beside = number(x) >= number("basin_length") || number(y) > number("basin_width");
      expect(beside, label).toBe(true);
    }
    expect(number("plan_far")).toBeGreaterThanOrEqual(1.4 * number("basin_length"));
  });

  test("the names of the section's levels stand one below another, clear of the walls", () => {
    const names = ["full_name_up", "running_name_up", "float_name_up", "lowest_name_up"].map(
      number,
    );
    names.slice(1).forEach((up, i) => {
      expect((names[i] as number) - up).toBeGreaterThan(0.12 * number("section_top"));
    });
    expect(number("section_names")).toBeGreaterThan(number("basin_length"));
  });

  test("the section has its crates and layers as high as they are", () => {
    const up = column("section_crates", "up");
    expect(Math.max(...up)).toBeCloseTo(number("crate_top"), 9);
    expect(new Set(up.map((at) => at.toFixed(6))).size).toBe(number("crate_layers") + 1);
  });

  test("the bars add up to the water needed", () => {
    const parts = ["minimum", "stream", "drained", "reserve"].map(
      (key) => column("basin_bars", key)[0] as number,
    );
    expect(parts.reduce((sum, one) => sum + one)).toBeCloseTo(number("basin_water_needed"), 6);
  });
});

describe("falls that stand too near for a name each share one", () => {
  const named = (
    falls: Changes[],
    runs: Changes[] = [{ ...demoRows("runs")[0], after_level: falls.length }],
  ) => {
    const values = changedDemo({ falls, runs });
    const said = (row: number) => String(shown(values, `course.said[${row}]`)).trim();
    return Array.from({ length: falls.length }, (_, i) => said(i + 1));
  };
  const fall = (name: string, level: number, drop: number): Changes => ({
    ...demoRows("falls")[0],
    ...{ name, level, drop },
  });

  test("three right below one another have the name of the first, to the last, and their drop together", () => {
    const stack = [fall("Top", 1, 0.5), fall("Middle", 2, 0.5), fall("Foot", 3, 0.75)];
    expect(named(stack)).toEqual(["Top to Foot, 3 falls: 1 ft 9 in", "", ""]);
  });

  test("one that stands far along, or far below, has its own", () => {
    const long = [{ after_level: 1, length: 60, width: 3, fall: 0.25, bed: "cobble" }];
    const two = [fall("Top", 1, 0.5), fall("Foot", 2, 0.5)];
    expect(named(two, long)).toEqual(["Top: 6 in", "Foot: 6 in"]);
    expect(named([fall("Top", 1, 8), fall("Foot", 2, 0.5)])).toEqual(["Top: 8 ft", "Foot: 6 in"]);
  });

  test("the falls of the demos keep a name each", () => {
    expect(demoRows("falls").length).toBe(4);
    expect(
      named([...demoRows("falls")], [...demoRows("runs")]).filter((said) => said !== "").length,
    ).toBe(3);
  });
});
