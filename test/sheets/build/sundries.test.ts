import { describe, expect, test } from "vitest";
import { yard } from "./small-yard.js";

const plain = yard();
const bought = (job: ReturnType<typeof yard>, description: string) =>
  job.at("materials", "description", description, "needed");
const hired = (job: ReturnType<typeof yard>, what: string) =>
  job.at("equipment", "what", what, "quantity");

describe("what a job takes besides its great pieces", () => {
  test("primer and cement go by the joints to cement", () => {
    const joints = plain.figure("pipe_joints");
    // worked out joint by joint among the sheets of money
    expect(bought(plain, "pipe primer, a can for each 50 joints")).toBeCloseTo(joints / 50, 9);
    expect(bought(plain, "pipe cement, a can for each 25 joints")).toBeCloseTo(joints / 25, 9);
  });

  test("unions, valve box and winter drain are there unless taken out", () => {
    expect(bought(plain, "unions and clamps at the pump, a set")).toBe(1);
    expect(bought(plain, "valve boxes")).toBe(1);
    expect(bought(plain, "winter drain valve")).toBe(1);
    const none = yard({ valve_boxes: 0, winter_drain: false });
    expect(bought(none, "valve boxes")).toBe(0);
    expect(bought(none, "winter drain valve")).toBe(0);
  });

  test("fabric covers the top and four sides of the crates", () => {
    // 5 crates of 27 x 16 in; 2 columns of 27 in and 3 rows of 16 in, 17 in high: 15 ft² and 17 ft of side
    expect(plain.figure("fabric_area")).toBeCloseTo(15 + 17 * (17 / 12), 6);
  });

  test("each light has its splice", () => {
    expect(bought(yard({ lights_wanted: 4 }), "sealed splices of the lights")).toBe(4);
  });

  test("each load of soil away has its dump fee", () => {
    expect(hired(plain, "Dump fees")).toBe(plain.figure("haul_loads"));
    expect(hired(yard({ dirt_stays: true }), "Dump fees")).toBe(0);
  });

  test("a last load under its share of a truck is charged for, a fuller one is not", () => {
    // 11 tons and a yard of sand in a truck of 15 tons and 10 yd³: 0.7 of one load
    expect(plain.figure("loads_in_parts")).toBeCloseTo(0.7, 1);
    expect(hired(plain, "Small-load charge")).toBe(0);
    expect(hired(yard({ small_load_share: 0.9 }), "Small-load charge")).toBe(1);
  });

  test("a long job has a toilet for each four weeks, a short one has none", () => {
    expect(hired(plain, "Portable toilet")).toBe(1); // 11 days allowed, 16 on the calendar
    expect(hired(yard({ toilet_from: 12 }), "Portable toilet")).toBe(0);
    expect(hired(yard({ crew_size: 1 }), "Portable toilet")).toBeGreaterThan(1);
  });
});

describe("lawn and planting", () => {
  test("nothing unless asked for", () => {
    for (const what of [
      "lawn seed with straw mulch",
      "plants",
      "bark mulch",
      "topsoil brought in",
    ]) {
      expect(bought(plain, what), what).toBe(0);
    }
  });

  test("disturbed ground: beside the work, along trenches and the way in", () => {
    // stripped 226.67 ft², less 35 of basin and the water's surface; 54 ft of trench at 4 ft; 60 ft of way at 6 ft
    const beside = 226.67 - 35 - plain.figure("stream_surface");
    expect(plain.figure("disturbed_ground")).toBeCloseTo(beside + 54 * 4 + 60 * 6, 1);
  });

  test("lawn, bed, plants and topsoil are lines and hours of their own", () => {
    const asked = { lawn_share: 0.5, plants_wanted: 12, planting_bed: 54, topsoil_depth: 2 };
    const job = yard(asked);
    const lawn = job.figure("disturbed_ground") / 2;
    expect(bought(job, "lawn seed with straw mulch")).toBeCloseTo(lawn, 6);
    expect(bought(job, "plants")).toBe(12);
    expect(bought(job, "bark mulch")).toBeCloseTo(54 / 4 / 27, 6); // 3 in deep
    expect(bought(job, "topsoil brought in")).toBeCloseTo((lawn + 54) / 6 / 27, 6);
    const hours = (task: string) => job.at("tasks", "task", task, "hours");
    expect(hours("Rake, seed and mulch lawn")).toBeCloseTo(lawn / 250, 6);
    expect(hours("Set plants")).toBeCloseTo(12 / 5, 6);
    // the way of 80 ft, with its slope and steps: 1.55
    expect(hours("Spread bark mulch")).toBeCloseTo((0.5 / 0.9) * 1.55, 2);
    expect(job.figure("price")).toBeGreaterThan(plain.figure("price"));
  });

  test("the customer reads what is left out, and what is not", () => {
    const said = (job: ReturnType<typeof yard>) => job.column("proposal_lines.says").join("\n");
    expect(said(plain)).toContain("Lawn worn by our way across it is not repaired in this price");
    expect(said(plain)).toMatch(/; plants\.$/m);
    expect(said(yard({ lawn_share: 1 }))).not.toContain("is not repaired in this price");
    expect(said(yard({ lawn_share: 1 }))).toContain("raked, seeded and mulched");
  });
});

test("what is left out is told with its reason, what is there is not", () => {
  const here = (job: ReturnType<typeof yard>, need: string) => {
    const row = job.column("usual_needs.need").indexOf(need) + 1;
    return job.value(`usual_needs.here[${row}]`);
  };
  expect(here(plain, "fill line")).toBe("LEFT OUT");
  expect(here(yard({ fill_line_length: 40 }), "fill line")).toBe("in bid");
  expect(here(plain, "winter drain")).toBe("in bid");
  expect(here(plain, "lawn repair")).toBe("LEFT OUT");
  expect(here(yard({ lawn_share: 1 }), "lawn repair")).toBe("in bid");
});

test("a foot of stream within its band, and a foot of fall beside it", () => {
  expect(plain.value("price_in_band")).toBe(true);
  // 2.5 ft of drop with a lip
  expect(plain.figure("price_per_fall")).toBeCloseTo(18150 / 2.5, 6);
});
