import { describe, expect, test } from "vitest";
import { valuesOf } from "../../../engine/book/values.js";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import type { JobRecord } from "../../../engine/job/record.js";
import {
  book,
  type Changes,
  changedDemo,
  demo,
  demoRows,
  firstRow,
  model,
  shown,
} from "../../support/changed-demo.js";
import { bidOf, demoJobs } from "../../support/demo.js";
import { linesOf, pageCells } from "../../support/page-cells.js";

/** The lines of the Crew page of the hillside demo with some inputs changed. */
function crew(changed: Changes, pasted: Changes = {}): string[] {
  const values = changedDemo(changed, { pasted });
  return pageCells(model, "crew").flatMap((cell) =>
    linesOf(cell, String(values[cell.index] ?? "")),
  );
}
const page = (changed: Changes = {}) => crew(changed).join("\n");

test("runs and pools are dug deeper than they finish, and Crew says how deep", () => {
  const dug = (changed: Changes) => String(shown(changedDemo(changed), "runs_told.dug[1]"));
  const said = page({ channel_cut: 1, bed_stone_depth: 6 });
  // banks of 9 in and 6 in of stone
  expect(dug({ channel_cut: 1, bed_stone_depth: 6 })).toBe("1 ft 3 in");
  expect(said).toMatch(/Mirror pool: dig .* deep, .* at the bottom/);
  expect(said).toContain("dug 6 in deeper than they finish");
  expect(dug({ channel_cut: 0 })).toBe("0 in");
  expect(page({ channel_cut: 0 })).not.toContain("dug 6 in deeper");
});

test("a ladder is told wherever one is needed, not only where too few are brought", () => {
  expect(page()).toMatch(/Bring 1 ladder or ramp; nobody in the dig is farther than/);
  expect(page({ ladders_brought: 0 })).toContain("STOP. Ladders or ramps");
});

describe("whoever does the circuit, the crew knows its voltage and what it waits for", () => {
  test.each([
    ["by us", "by our licensed electrician: "],
    ["by an electrician in our price", "no pump is started before it is done and tested"],
    ["by the customer", "before their electrician has done and tested it"],
  ])("%s", (electrical_work, words) => {
    const said = page({ electrical_work });
    expect(said).toContain(words);
    expect(said).toContain("240 V");
  });
});

test("what was ordered with the other goods the electrician does not bring", () => {
  const lay = (changed: Changes) => /Conduit and wire: .*/.exec(page(changed))?.[0] ?? "";
  const byElectrician = { electrical_work: "by an electrician in our price" };
  // the demo holds the electrician's quote
  expect(lay(byElectrician)).toContain("the electrician brings and lays them");
  const unquoted = lay({ ...byElectrician, subcontracts: [] });
  expect(unquoted).toContain("come with our orders");
  expect(unquoted).not.toContain("brings");
});

describe("the stone over the crates is what is left up to the rim, not the least that the office wants", () => {
  test.each([
    // crates of 17 in, in two layers, then in one
    [4, "1 ft 2 in over the crates"],
    [3.25, "1 ft 10 in over the crates"],
  ])("a basin %s ft deep", (basin_depth, words) => {
    expect(page({ basin_depth })).toContain(words);
  });
});

test("a crew that works by hand reads how much it wheels, and how far", () => {
  const wheel = /By barrow: [\d,]+ yd³, counted where it lies, 80 ft between work and truck/;
  expect(page({ method_choice: "by hand", site_haul: 80 })).toMatch(wheel);
  expect(page({ site_haul: 80 })).not.toContain("By barrow: ");
});

test("a soil typed past its list puts errors into the lines: the page still begins with DRAFT", () => {
  const [first, ...rest] = crew({}, { dig_soil_type: "sandy" });
  expect(first).toMatch(/^DRAFT, not to be handed out/);
  expect(rest.join()).toContain("#N/A");
});

test("a job by hand names no machine on Crew, and still says how long it takes", () => {
  const said = page({ gate_width: 2.5 });
  expect(said).toContain("Haul 50 ft from truck to work, by hand.");
  expect(said).toMatch(/4 people, \d+ days of work, by hand/);
  expect(said).toMatch(/\d+ days of work by the hours below, \d+ days with the usual rain/);
  expect(said).not.toMatch(/machine on hire|The machine is|or the machine|by machine/);
  expect(page()).toMatch(/machine on hire 11 days[\s\S]*The machine is on hire 11 days: the days/);
});

test("a job that has no price yet prints as a draft, though no check of it fails", () => {
  const began = { ...demo.inputs, runs: [] };
  const values = calculateFast(model, [
    ...valuesOf(model, { ...demo, inputs: began } as JobRecord, book),
  ]);
  expect([shown(values, "described"), shown(values, "price")]).toEqual([false, 0]);
  const [first] = pageCells(model, "crew").map(({ index }) => String(values[index]));
  expect(first).toMatch(/^DRAFT, not to be handed out: .*no price yet/);
});

describe("what a foreman asks first", () => {
  test("where the main goes through the liner, as deep as its trench lays it, and where the manifold stands", () => {
    // 24 in of trench, 4 in of bedding
    expect(page()).toMatch(
      /Bulkhead of the main: through the liner, its bottom about (20 in|1 ft 8 in) below the ground/,
    );
    expect(page({ trench_depth: 36 })).toMatch(
      /Bulkhead .* about (32 in|2 ft 8 in) below the ground/,
    );
    expect(page()).toMatch(
      /Manifold: at the end of the main, 26 ft long, .* about 15 ft \d in up the tape; .* as staked with the office/,
    );
  });

  test("the way of the cables of the lights, only where there are lights", () => {
    expect(page()).toMatch(
      /the lights' cable, 12 AWG, 20 ft a light, .*No trench of its own is planned/,
    );
    expect(page({ lights_wanted: 0 })).not.toContain("the lights' cable");
  });

  test("beside a place for a sketch, what the walk knows: haul, stone drop, trees", () => {
    const says =
      (changed: Changes = {}) =>
      (id: string) =>
        shown(changedDemo(changed), id);
    expect(says()("site_ways")).toBe("Haul 50 ft from truck to work, by machine.");
    expect(says()("site_drop")).toBe("Trucks tip here: as staked with the office.");
    expect(says({ stone_drop: "left of the drive" })("site_drop")).toContain("left of the drive");
    expect(says()("site_trees")).toBe(
      "Oak by the terrace: 20 ft from the nearest digging, 18 ft from the fill",
    );
    const slots = model.placed.flatMap(({ sheet, block }) =>
      sheet === "Crew" && block.kind === "panel"
        ? block.rows.flatMap(({ places }) => places.filter(({ look }) => look === "slot"))
        : [],
    );
    expect(slots.map(({ says: words }) => words)).toEqual([expect.stringContaining("Site sketch")]);
  });

  test("the tape counts the inches of a run", () => {
    const tape = (plus: number) =>
      shown(
        changedDemo(firstRow("runs", { length_plus: plus })),
        "lip_points.from_basin[1]",
      ) as number;
    expect(demoRows("runs").length).toBeGreaterThan(0);
    expect(tape(6) - tape(0)).toBeCloseTo(0.5, 9);
  });
});

describe("no stone weighs more than its place takes", () => {
  const of = (id: string, changed: Changes = {}) => Number(shown(changedDemo(changed), id));
  const weights = (changed: Changes = {}) =>
    Array.from({ length: 13 }, (_, i) => [
      of(`stone_places.heaviest[${i + 1}]`, changed),
      2000 * of(`stone_places.tons[${i + 1}]`, changed),
    ]);

  test("the largest of each place is at most what is placed there", () => {
    const all = weights();
    expect(all.filter(([, placed]) => (placed as number) > 0).length).toBeGreaterThan(8);
    for (const [heaviest, placed] of all) expect(heaviest).toBeLessThanOrEqual(placed as number);
  });

  test("a lip stone is as long as its lip, or a part of one that is longer than the stone bought", () => {
    // 4 ft 6 in of lip from stones of 36 in at most, 2 ft by 0.33 ft, 5 % joints, 165 lb/ft³
    expect(page()).toContain("Terrace fall: 4 ft 6 in, flat stone, 2 stones of 2 ft 3 in, butted");
    expect(of("lip_said.lip_stones[4]")).toBe(2);
    expect(of("stone_places.heaviest[1]")).toBeCloseTo(3 * 2 * 0.33 * 0.95 * 165, 6);
    const narrow = { falls: demoRows("falls").map((row) => ({ ...row, width: 1.5 })) };
    expect(of("stone_places.heaviest[1]", narrow)).toBeCloseTo(1.5 * 2 * 0.33 * 0.95 * 165, 6);
  });

  test("lips for which no stone is listed tell of none", () => {
    const none = { stone_places: [] };
    expect(of("lip_stone_longest", none)).toBe(0);
    expect(page(none)).toContain("Terrace fall: 4 ft 6 in, flat stone, no stone listed");
  });

  test("stone that may stand above its banks is dug in", () => {
    expect(page()).toMatch(/Boulders in the bed: .*; dig it in, no higher than the banks/);
    expect(page({ bed_stone_depth: 12 })).not.toContain("dig it in");
  });
});

test("each lip has the flow that it gets, in the table of points", () => {
  const flows = [1, 2, 3, 4].map((row) => shown(changedDemo({}), `set_out.flow[${row}]`));
  expect(flows).toEqual(["60", "75", "30", "135"]);
});

test("the dirt of the dig is told in the figures of the earthwork", () => {
  const values = changedDemo({});
  const [dug, spare, used] = ["dig_volume", "trench_spare", "dirt_used"].map((id) =>
    Number(shown(values, id)).toFixed(1),
  );
  expect(page()).toContain(`${dug} yd³ dug, the trenches leave ${spare} yd³; ${used} yd³ stay`);
});

test("the seams of the stream's sheet: a roll up from its lap in the basin, less the lap of the seam", () => {
  // rolls of 25 ft, 1 ft in the basin, 6 in of lap; two seams
  expect(page()).toContain(
    "The stream's seam lies 23 ft 6 in along the ground from the basin's edge, further ones 24 ft 6 in apart",
  );
});

test("a step stands in one row with all that it needs to know; one that is not wanted leaves its lines to the one before", () => {
  const rows = (changed: Changes = {}) => {
    const values = changedDemo(changed);
    const { columns } = model.tables.get("crew_steps") as NonNullable<
      ReturnType<typeof model.tables.get>
    >;
    const of = (key: string) =>
      (columns.get(key)?.cells ?? []).map(({ index }) => String(values[index]));
    return of("opening").map((opening, i) => [opening, of("rest")[i] ?? ""] as const);
  };
  const used = rows().filter(([opening, rest]) => opening + rest !== "");
  expect(used.length).toBeLessThan(40);
  expect(used.every(([opening]) => /^(☐|■) /.test(opening))).toBe(true);
  const dig = used.find(([opening]) => opening.startsWith("☐ Dig basin and stream")) ?? ["", ""];
  expect(dig[1]).toMatch(
    /• {2}Mirror pool: dig [^\n]*\n[\s\S]*\n• {2}Basin: [^\n]*\n[\s\S]*\n• {2}Dirt stays [^\n]*$/,
  );
  // no topsoil is stripped: its box goes, and what stands below it follows upon the row before
  const without = rows({ strip_depth: 0 }).map(([opening]) => opening);
  expect(without.join()).not.toContain("Strip topsoil");
  expect(without.indexOf("")).toBe(used.length - (used.length - without.filter(Boolean).length));
});

test.each(demoJobs())(
  "no line of a step of %s is lost or out of its place where they stand together",
  async (job) => {
    const { model: made, values } = await bidOf(job);
    const column = (table: string, key: string) =>
      (made.tables.get(table)?.columns.get(key)?.cells ?? []).map(({ index }) => values[index]);
    const places = column("crew_choice", "place");
    const stops = Number(values[made.byId.get("crew_stops_count")?.index as number]);
    const bare = (said: unknown) => String(said).replace(/^• {2}/, "");
    // what is wanted, in the order of the list, without what stands under Stop first
    const wanted = column("crew_lines", "says")
      .filter((_, i) => Number.isInteger(places[i]) && places[i] !== 0)
      .map(bare)
      .slice(stops);
    const openings = column("crew_steps", "opening");
    const shownLines = column("crew_steps", "rest").flatMap((rest, i) =>
      [openings[i], ...String(rest).split("\n")].filter((one) => one !== "").map(bare),
    );
    expect(wanted.length).toBeGreaterThan(40);
    expect(shownLines).toEqual(wanted);
    // each begins as a sentence does, and behind a bullet
    for (const rest of column("crew_steps", "rest").flatMap((one) => String(one).split("\n"))) {
      expect(rest).toMatch(/^$|^• {2}[^a-z]/);
    }
  },
);
