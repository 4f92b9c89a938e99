import { describe, expect, test } from "vitest";
import {
  type Changes,
  changedDemo,
  demoRows,
  model,
  pageOf,
  shown,
} from "../support/changed-demo.js";

const figure = (changed: Changes, id: string) => shown(changedDemo(changed), id) as number;
const hires = model.tables.get("equipment")?.columns.get("what")?.cells.length ?? 0;
const costOf = (changed: Changes, what: string): number => {
  const values = changedDemo(changed);
  for (let row = 1; row <= hires; row++) {
    if (shown(values, `equipment.what[${row}]`) === what) {
      return shown(values, `equipment.cost[${row}]`) as number;
    }
  }
  throw new Error(`No ${what} among the equipment`);
};
const hoursOf = (changed: Changes, task: string): number => {
  const values = changedDemo(changed);
  for (let row = 1; ; row++) {
    if (shown(values, `tasks.task[${row}]`) === task) {
      return shown(values, `tasks.hours[${row}]`) as number;
    }
  }
};
const proposal = (changed: Changes) => pageOf(changedDemo(changed), "proposal").join("\n");

describe("protection of a dig costs money", () => {
  const deep = { basin_depth: 6, site_haul: 0 };
  const shored = { ...deep, dig_protection: "shored or shielded" };
  // 14 by 9 ft, 6 ft and 2 in of bedding deep
  const face = 2 * (14 + 9) * (6 + 2 / 12);

  test("shoring: the face of the dig, on hire and set by the crew", () => {
    expect(figure(deep, "shored_face")).toBe(0);
    expect(figure(shored, "shored_face")).toBeCloseTo(face, 9);
    expect(costOf(shored, "Shoring and shields")).toBeCloseTo(4.5 * face, 2);
    // 22 ft² an hour, the way open
    expect(hoursOf(shored, "Set shoring and pull it again")).toBeCloseTo(face / 22, 9);
    expect(figure(shored, "total_cost")).toBeGreaterThan(figure(deep, "total_cost") + 4.5 * face);
    expect(proposal(shored)).toMatch(/Shoring of the deep digs/);
    expect(proposal(deep)).not.toMatch(/Shoring/);
  });

  test("sloped sides of the basin: dug, and filled again", () => {
    const sloped = { ...deep, dig_protection: "sloped", dig_slope: 1.5 };
    const [h, run] = [6 + 2 / 12, 1.5 * (6 + 2 / 12)];
    const more = h * (run * (14 + 9) + (4 / 3) * run * run);
    const dug = figure(sloped, "basin_dig") - figure(deep, "basin_dig");
    expect(dug).toBeCloseTo(more / 27, 9);
    expect(figure(sloped, "basin_backfill")).toBeCloseTo(more / 27, 6);
    expect(figure(sloped, "man_hours")).toBeGreaterThan(figure(deep, "man_hours") + dug / 1.6);
  });

  test("sloped sides of a pool: dug, and filled again", () => {
    const pools = [{ ...demoRows("pools")[0], depth: 6 }];
    const upright = { pools };
    const sloped = { pools, pool_protection: "sloped", pool_sides: 1.5 };
    // 7 by 5 ft, 4 in wider for stone each side and as much deeper; half is cut, of an oval's 80 %
    const [l, w, h, run] = [7 + 8 / 12, 5 + 8 / 12, 6 + 4 / 12, 1.5 * (6 + 4 / 12)];
    const more = 0.5 * 0.8 * h * (run * (l + w) + (4 / 3) * run * run);
    expect(figure(sloped, "pool_dig") - figure(upright, "pool_dig")).toBeCloseTo(more / 27, 9);
    expect(figure(sloped, "pool_backfill")).toBeCloseTo(more / 27, 9);
    expect(figure(upright, "pool_backfill")).toBeCloseTo(0, 9);
  });

  test("shoring of a pool: the face of the hole, wider than its water", () => {
    const pools = [{ ...demoRows("pools")[0], depth: 6 }];
    const held = { pools, pool_protection: "shored or shielded" };
    const [l, w, h] = [7 + 8 / 12, 5 + 8 / 12, 6 + 4 / 12];
    expect(figure(held, "shored_face")).toBeCloseTo(2 * (l + w) * h, 9);
  });

  test("engineered protection: the face, and a design", () => {
    const engineered = { ...deep, dig_protection: "engineered" };
    expect(figure(engineered, "shored_face")).toBeCloseTo(face, 9);
    expect(costOf(engineered, "Engineer's designs")).toBe(950);
  });
});

describe("permit and engineer of a wall", () => {
  const walls = [{ ...demoRows("walls")[0], height: 5, arranged: true }];

  test("stand in the price as soon as a wall needs them", () => {
    expect(costOf({}, "Engineer's designs")).toBe(0);
    expect(costOf({ walls }, "Engineer's designs")).toBe(950);
    expect(costOf({ walls }, "Permits and reviews")).toBe(240);
    expect(proposal({ walls })).toMatch(/1 engineer's design, for walls/);
    expect(proposal({ walls })).toMatch(/• {2}1 permit that/);
  });

  test("or are left out in words", () => {
    const left = { walls, permit_work: "by the customer" };
    expect(costOf(left, "Engineer's designs")).toBe(0);
    expect(costOf(left, "Permits and reviews")).toBe(0);
    expect(proposal(left)).toMatch(/permit and the engineer's design for the walls/);
    expect(proposal(left)).not.toMatch(/• {2}.*engineer's design/);
  });
});

describe("inspections of the digs", () => {
  test("take our own hours, or are hired", () => {
    const hired = { inspections_by: "a hired competent person" };
    const inspections = figure({}, "inspections_needed");
    expect(inspections).toBeGreaterThanOrEqual(figure({}, "open_dig_days"));
    expect(figure({}, "man_hours") - figure(hired, "man_hours")).toBeCloseTo(inspections * 0.5, 9);
    expect(costOf({}, "Inspections of the digs by others")).toBe(0);
    expect(costOf(hired, "Inspections of the digs by others")).toBe(110 * inspections);
  });

  test("are more where rain comes between", () => {
    const rain = (days: number) =>
      figure(
        { rain_months: Array.from({ length: 12 }, () => ({ rain_days: days })) },
        "inspections_needed",
      );
    expect(rain(0)).toBe(figure({}, "open_dig_days"));
    expect(rain(20)).toBeGreaterThan(rain(0));
  });

  test("follow every rain, those too that cost no day: 3 days open, 15 of 30 with rain", () => {
    const rain = (share: number) => ({
      rain_months: Array.from({ length: 12 }, () => ({ rain_days: 15 })),
      rain_stops_work: share,
    });
    const looks = (share: number) => figure(rain(share), "inspections_needed");
    expect(figure(rain(0), "open_dig_days")).toBe(3);
    expect(looks(0)).toBe(Math.ceil(3 * (1 + 0.5)));
    // half of them cost a day: the digs stand open for 4 days
    expect(looks(0.5)).toBe(3 + 4 * 0.5);
    expect(looks(1)).toBe(3 + 6 * 0.5);
  });
});

test("the proposal says what circuit the customer has to provide", () => {
  const left = proposal({ electrical_work: "by the customer", subcontracts: [] });
  expect(left).toMatch(/could not show; the electric circuit to the pump, with its breaker/);
  expect(left).toMatch(/must carry 13\.6 amperes at 240 volts .* breaker of 20 amperes/);
  expect(proposal({})).not.toMatch(/that you provide/);
});

test("the trench of the conduit is dug, unless others dig it or the customer sees to the circuit", () => {
  const conduit = (changed: Changes) => figure(changed, "trenches.dug[4]");
  expect(conduit({})).toBe(70);
  expect(conduit({ trenches: [{}, {}, {}, { shared: true }] })).toBe(0);
  expect(conduit({ electrical_work: "by the customer", subcontracts: [] })).toBe(0);
});
