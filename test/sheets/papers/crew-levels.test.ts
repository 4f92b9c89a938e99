import { describe, expect, test } from "vitest";
import { demoRows, firstRow, pagesAfter } from "../../support/changed-demo.js";

const crewAfter = (changed: Record<string, unknown> = {}) => pagesAfter(changed).crew;

describe("the crew is told at what height things stand", () => {
  test("a pot that stands above the water of its level", () => {
    const raised = crewAfter(firstRow("pipe_lines", { pot_rise: 1.5 }));
    expect(raised).toContain(
      "•  Spring: set its pot so that its water stands 1 ft 6 in above the water of level 1.",
    );
    expect(crewAfter().join("\n")).not.toContain("set its pot");
  });

  // The water of a level stands above the running basin; its lip stands under that water, and the
  // basin's rim above the running basin: a lip is set out from the rim.
  test("each lip from the basin's rim: drops and falls below it, less the water over it", () => {
    const { value } = pagesAfter();
    const of = (id: string) => value(id) as number;
    const falls = demoRows("falls") as { name: string; level: number; drop: number }[];
    const runs = demoRows("runs") as { after_level: number; fall: number }[];
    expect(falls.length).toBeGreaterThan(2);
    for (const [i, { name, level }] of falls.entries()) {
      const below = [...new Set(falls.map((fall) => fall.level))].filter((other) => other >= level);
      const drops = below.map((at) =>
        Math.max(...falls.filter((fall) => fall.level === at).map(({ drop }) => drop)),
      );
      const fallen = runs.filter((run) => run.after_level >= level).map(({ fall }) => fall);
      const water = [...drops, ...fallen].reduce((sum, one) => sum + one, 0);
      const lip = water - of(`falls.lip_depth[${i + 1}]`) / 12;
      expect(of(`falls.lip_above_rim[${i + 1}]`)).toBeCloseTo(lip, 9);
      const feet = Math.floor(lip);
      expect(value(`set_out.point[${i + 1}]`)).toBe(`${name}, level ${level}`);
      expect(value(`set_out.lip[${i + 1}]`)).toMatch(new RegExp(`^${feet} ft`));
    }
  });

  test("water in a run is an average between its stones, and is run before banks are set", () => {
    const { value, crew } = pagesAfter(firstRow("runs", { bed: "gravel" }));
    expect(value("runs_told.run[1]")).toBe("Upper run, gravel");
    expect(value("runs_told.water[1]")).toMatch(/^\S+ in to \S+ in$/);
    expect(crew.join("\n")).toMatch(/Before boulders, banks and cobble are set/);
  });
});

/** The spring's line ends under water, in a pool that nobody has named. */
const uncounted = {
  ...firstRow("pipe_lines", { siphon_stop: null, above_water: 0 }),
  pools: demoRows("pools").slice(0, 1),
};

describe("the crew gets a height for the fill float only where it is safe", () => {
  const floats = (changed: Record<string, unknown>) =>
    crewAfter(changed).filter((line) => line.includes("ill float"));
  const withheld = "•  Fill float: not to be set yet, see STOP.";

  test("where it is", () => {
    expect(floats({})).toEqual([
      expect.stringMatching(/^• {2}Fill float: while the pump runs it shuts at .* below the rim\./),
    ]);
  });

  test.each([
    ["so high that a stop spills", { override_float: 4 }, /a stop would spill \d+ gal/],
    ["so low that the pump draws air", { override_float: 46 }, /where the pump needs/],
    ["with water coming back that nobody has counted", uncounted, /through Spring is not counted/],
  ])("%s", (_, changed, stop) => {
    expect(floats(changed)).toEqual([expect.stringMatching(stop), withheld]);
  });

  test("and no bid stands while siphoned water is not counted", () => {
    const failed = (changed: Record<string, unknown>) => pagesAfter(changed).value("checks_failed");
    expect(failed(uncounted)).toBe(Number(failed({})) + 1);
  });
});
