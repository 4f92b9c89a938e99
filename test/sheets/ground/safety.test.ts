import { describe, expect, test } from "vitest";
import type { InputValues } from "../../../engine/job/record.js";
import { changedDemo, pageOf, shown, withMachine } from "../../support/changed-demo.js";
import { stream, unprotected, work } from "./bench.js";

const pool = { name: "Deep pool", length: 6, width: 5, depth: 6 };
const wall = { name: "Back wall", length: 20, height: 5, arranged: true };
const gully = { name: "Gully", length: 10, width: 3, bank_height: 6, side: 0.5 };

describe("each place that is dug counts by its own depth", () => {
  const cases: [
    what: string,
    InputValues,
    deepest: string,
    depth: number,
    unprotected: string[],
  ][] = [
    ["a pool", { pools: [pool] }, "Deep pool", 6 + 4 / 12, ["Deep pool"]],
    [
      "a pool that is built up, not cut",
      { pools: [pool], channel_cut: 0 },
      "Basin",
      3.5 + 2 / 12,
      [],
    ],
    ["a stream cut", { runs: [gully] }, "Gully", 6 + 4 / 12, ["Gully"]],
    ["a wall's footing", { walls: [wall] }, "Basin", 3.5 + 2 / 12, []],
    [
      "a wall in a cut bank",
      { walls: [{ ...wall, cut_bank: true }] },
      "Footing of Back wall",
      6,
      ["Footing of Back wall"],
    ],
    ["a trench", { trench_depth: 66 }, "Trench of main", 5.5, ["Trench of main"]],
    ["a basin cut into a slope", { ground_over_rim: 1.5 }, "Basin", 5 + 2 / 12, ["Basin"]],
    ["no trench", { trench_depth: 66, main_length: 0 }, "Basin", 3.5 + 2 / 12, []],
    [
      "a sloped basin beside an upright trench",
      { basin_depth: 6, dig_protection: "sloped", dig_slope: 2, trench_depth: 66 },
      "Basin",
      6 + 2 / 12,
      ["Trench of main"],
    ],
    [
      "a shored basin beside an unshored pool",
      { basin_depth: 7, dig_protection: "shored or shielded", pools: [pool] },
      "Basin",
      7 + 2 / 12,
      ["Deep pool"],
    ],
    [
      "a pool with sides at 1.5 to 1",
      { pools: [pool], pool_protection: "sloped", pool_sides: 1.5 },
      "Deep pool",
      6 + 4 / 12,
      [],
    ],
    [
      "a stream cut with sides too steep for its soil",
      { runs: [gully], stream_protection: "sloped" },
      "Gully",
      6 + 4 / 12,
      ["Gully"],
    ],
  ];

  test.each(cases)("%s", (_, inputs, deepest, depth, without) => {
    const worked = work({ ...stream, ...inputs });
    expect(worked.value("deepest_place")).toBe(deepest);
    expect(worked.number("deepest_dig")).toBeCloseTo(depth, 9);
    expect(unprotected(worked)).toEqual(without);
  });

  test("a way out is counted for every deep place", () => {
    // basin 3.67 ft: none; trench of 40 ft: 1; pool: 1; stream cut of 60 ft: 2
    const inputs = { trench_depth: 48, pools: [pool], runs: [{ ...gully, length: 60 }] };
    expect(work({ ...stream, ...inputs }).number("ladders_needed")).toBe(4);
  });
});

describe("until a competent person has looked, nobody goes in", () => {
  const looked = {
    cave_in_signs: "no signs",
    dig_inspected_by: "Invented foreman",
    dig_inspected_on: "2027-04-05",
  };
  const stops = (changed: Record<string, unknown>): string[] =>
    pageOf(changedDemo(changed), "crew").filter((line) => line.startsWith("STOP"));
  const aboutLook = (changed: Record<string, unknown>): string[] =>
    stops(changed).filter((line) => line.includes("competent person"));

  test.each<[string, Record<string, unknown>, boolean]>([
    ["nothing said", {}, true],
    ["looked, but by nobody", { ...looked, dig_inspected_by: "" }, true],
    [
      "looked, but on no day",
      { cave_in_signs: "no signs", dig_inspected_by: "Invented foreman" },
      true,
    ],
    ["looked, name and date", looked, false],
    ["every dig shallow", { basin_depth: 2, trench_depth: 24 }, false],
  ])("%s: Crew says STOP is %s", (_, changed, stopped) => {
    expect(aboutLook(changed).length > 0).toBe(stopped);
    expect(shown(changedDemo(changed), "dig_inspected")).toBe(!stopped);
  });

  test("the STOP names the places", () => {
    const [line] = aboutLook({ trench_depth: 40 });
    expect(line).toMatch(/^STOP[.] Basin, Trench of main, Trench of lines: nobody goes in until/);
  });

  test("signs seen in a shallow dig stop the crew there", () => {
    const found = stops({ ...looked, cave_in_signs: "signs" });
    expect(found.some((line) => line.startsWith("STOP. Basin is dug"))).toBe(true);
  });

  test("who looked, and when, stands on the page", () => {
    const page = pageOf(changedDemo(looked), "crew").join("\n");
    expect(page).toContain("Invented foreman looked on April 5, 2027: no signs of a cave-in.");
  });
});

describe("a lifting chart that is an example's allows nothing", () => {
  const about = (machine: Record<string, unknown>, changed: Record<string, unknown> = {}) =>
    pageOf(changedDemo(changed, { prices: withMachine(machine) }), "crew").filter((line) =>
      // the pump's own line says how it is lifted out
      /\blift\b(?! it out)/i.test(line),
    );
  const short = { lift_1: 300, lift_2: 290, lift_3: 280, lift_4: 270 };
  const allows = /chart .*allows/;

  test.each<[string, Record<string, unknown>]>([
    ["nothing said", { chart_copied: undefined }],
    ["no", { chart_copied: false }],
    ["a stone too heavy for it", { chart_copied: false, ...short }],
  ])("%s: STOP, and no chart is said to allow", (_, changed) => {
    const lines = about(changed);
    expect(lines.filter((line) => line.startsWith("STOP"))).toHaveLength(1);
    expect(lines.join("\n")).toContain("Ask for the chart of the machine itself");
    expect(lines.join("\n")).not.toMatch(allows);
  });

  test("the machine's own chart speaks, by the machine's name", () => {
    const lines = about({ description: "The hired excavator" });
    expect(lines.some((line) => line.startsWith("STOP"))).toBe(false);
    expect(lines.join("\n")).toMatch(/the chart of The hired excavator allows/);
  });

  test("its own chart against a stone too heavy: STOP", () => {
    const [first] = about({ ...short, description: "The hired excavator" });
    expect(first).toMatch(/^STOP\. Do not lift: .* the chart of The hired excavator allows \d+ lb/);
  });

  test("chart taken over and dig looked at: Crew says no STOP", () => {
    const looked = {
      cave_in_signs: "no signs",
      dig_inspected_by: "Foreman",
      dig_inspected_on: "2027-04-05",
    };
    expect(pageOf(changedDemo(looked), "crew").join("\n")).not.toContain("STOP");
  });

  test("no stone to lift, nothing to stop", () => {
    const values = changedDemo({ stone_places: [] });
    expect(shown(values, "heaviest_stone")).toBe(0);
    expect(about({}, { stone_places: [] })).toEqual([]);
  });
});

describe("standing water by its depth", () => {
  const pool = { name: "Mirror pool", before_level: 3, length: 7, width: 5 };
  const job = (depth: number, more = {}) => changedDemo({ pools: [{ ...pool, depth, ...more }] });

  // municipal ordinances: a barrier where water is over 24 in deep
  test.each<[number, boolean]>([
    [1.9, true],
    [2.1, false],
  ])("%f ft below the lip, running water on top: no barrier is needed: %s", (depth, fine) => {
    const values = job(depth);
    expect(shown(values, "pools.fenced[1]")).toBe(fine);
    const stops = pageOf(values, "crew").filter((line) => line.startsWith("STOP. Mirror pool"));
    expect(stops).toHaveLength(fine ? 0 : 1);
    expect(shown(job(depth, { barrier_planned: true }), "pools.fenced[1]")).toBe(true);
  });

  const barrier =
    /Pool water up to 3 ft \d in deep: over 24 in many places ask for a barrier 48 in high/;
  const drowning = {
    proposal:
      /A child can drown in 2 in of water; here it stands up to 1 ft 4 in deep: never leave/,
    crew: /Pool water up to 1 ft 4 in deep: a child can drown in 2 in/,
  };

  test.each<[number, { proposal: RegExp; crew: RegExp } | undefined]>([
    [0, undefined],
    [1.2, drowning],
    [3, { proposal: barrier, crew: barrier }],
  ])("%f ft: customer and crew read the caution for it", (depth, words) => {
    for (const page of ["proposal", "crew"] as const) {
      const text = pageOf(job(depth), page).join("\n");
      if (words === undefined) expect(text).not.toMatch(/Pool water up to|here it stands up to/);
      else expect(text).toMatch(words[page]);
    }
  });
});
