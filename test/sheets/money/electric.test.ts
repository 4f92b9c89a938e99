import { describe, expect, test } from "vitest";
import type { InputValues } from "../../../engine/job/record.js";
import { book, moneyJob, smallJob } from "./money-job.js";

/** A pump of 960 W at 120 V and a power factor of 0.8: 10 A. */
const tenAmperes: InputValues = { ...smallJob, pump_points: [{ watts: 960 }, { watts: 700 }] };
const of = (changed: InputValues) => moneyJob({ ...tenAmperes, ...changed });

test("the load by hand: the most that the pump's curve draws, and the transformers", () => {
  const job = of({ lights_wanted: 12 });
  expect(job.figure("pump_current")).toBeCloseTo(10, 9);
  expect(job.figure("lights_load")).toBe(36);
  expect(job.figure("circuit_current")).toBeCloseTo(10 + 36 / 120, 9);
  expect(job.figure("breaker_needed")).toBeCloseTo(1.25 * 10.3, 9);
  expect(of({ pump_nameplate: 11.5 }).figure("pump_current")).toBe(11.5);
});

test("a pump without watts in the book: its power as set, brought to full speed", () => {
  const job = moneyJob({ ...smallJob, pump_watts: 100, pump_speed: 0.5 });
  expect(job.figure("pump_full_load")).toBeCloseTo(800, 9);
});

describe("voltage drop by hand: 2 x 12.9 x 10 A x (94 + 6) ft over the area of the wire", () => {
  test.each([
    ["12 AWG", 6530, false],
    ["10 AWG", 10380, true],
    ["8 AWG", 16510, true],
    ["6 AWG", 26240, true],
  ])("%s", (wire_size, area, low) => {
    const job = of({ panel_distance: 94, wire_ends: 6, wire_size });
    expect(job.figure("circuit_drop")).toBeCloseTo((2 * 12.9 * 10 * 100) / area, 9);
    expect(job.figure("circuit_drop_share")).toBeCloseTo((2 * 12.9 * 1000) / area / 120, 9);
    expect(job.value("circuit_drop_low")).toBe(low);
  });
});

test.each([
  // 80 % of 20 A are 16 A
  ["16 A on a breaker of 20 A", { pump_nameplate: 16 }, true, true],
  ["16.1 A on a breaker of 20 A", { pump_nameplate: 16.1 }, false, true],
  ["16.1 A on 30 A and thin wire", { pump_nameplate: 16.1, breaker_rating: 30 }, true, false],
  [
    "16.1 A on 30 A and thicker wire",
    { pump_nameplate: 16.1, breaker_rating: 30, wire_size: "10 AWG" },
    true,
    true,
  ],
])("%s", (_, changed, carries, protected_) => {
  const job = of(changed);
  expect(job.value("breaker_carries")).toBe(carries);
  expect(job.value("wire_protected")).toBe(protected_);
});

test.each([
  [0, 0],
  [1, 1],
  [40, 1], // 120 W are 80 % of 150 W
  [41, 2],
])("%d lights of 3 W take %d transformers of 150 W", (lights_wanted, transformers) => {
  expect(of({ lights_wanted }).figure("transformers_needed")).toBe(transformers);
});

test("a strong light at the end of a long cable gets too little", () => {
  const small = of({ lights_wanted: 1 });
  expect(small.figure("light_drop_share")).toBeCloseTo((2 * 12.9 * (3 / 12) * 20) / 6530 / 12, 9);
  expect(small.value("light_drop_low")).toBe(true);
  expect(of({ lights_wanted: 1, light_power: 50, cable_a_light: 80 }).value("light_drop_low")).toBe(
    false,
  );
});

describe("who does the circuit decides what stands in the bid", () => {
  const codes = ["gfci-outlet", "breaker", "conduit", "wire-12"];
  const quote = (electrical: boolean) => [
    { work: "electric work", electrical, amount: 500, quoted_until: "2027-06-30" },
  ];
  const byElectrician = "by an electrician in our price";
  const rates = (book().tables.rates ?? []).map((row) =>
    row.code === "electrician-hour" ? { ...row, value: 95 } : row,
  );
  const priced = { ...book(), tables: { ...book().tables, rates } };
  test.each([
    // choice, quotes, lines bought, our own hours, electrician's cost, permits, work by others, trench
    ["by us", [], 4, 3, 0, 1, 0, 30],
    // 30 ft at 30 ft an hour and 2 h for breaker and outlet, at $95
    [byElectrician, [], 4, 0, 285, 1, 285, 30],
    [byElectrician, quote(false), 4, 0, 285, 1, 785, 30],
    [byElectrician, quote(true), 0, 0, 0, 0, 500, 30],
    ["by the customer", [], 0, 0, 0, 0, 0, 0],
  ])("%s", (electrical_work, subcontracts, lines, own, cost, permits, others, trench) => {
    const job = moneyJob({ ...smallJob, electrical_work, subcontracts }, priced);
    const bought = codes.filter((code) => (job.ofLine(code, "order_quantity") as number) > 0);
    expect(bought).toHaveLength(lines);
    expect(job.figure("own_electrician_hours")).toBeCloseTo(own, 9);
    expect(job.figure("electrician_cost")).toBeCloseTo(cost, 9);
    expect(job.figure("permits_paid")).toBe(permits);
    expect(job.figure("subcontract_cost")).toBeCloseTo(others, 9);
    expect(job.figure("conduit_trench")).toBe(trench);
    expect(job.value("electrician_quoted")).toBe(cost === 0);
  });

  test("the customer's circuit is sized by his electrician, not by our checks", () => {
    const heavy = { pump_nameplate: 30, panel_distance: 300 };
    const failing = (electrical_work: string) =>
      ["breaker_carries", "circuit_drop_low"].filter(
        (name) => moneyJob({ ...smallJob, ...heavy, electrical_work }).value(name) !== true,
      );
    expect(failing("by us")).toHaveLength(2);
    expect(failing("by the customer")).toEqual([]);
  });

  test("a quote marked electrical beside another choice fails a check", () => {
    const job = moneyJob({ ...smallJob, subcontracts: quote(true) });
    expect(job.value("quote_fits_work")).toBe(false);
  });
});

test.each([
  [1, 15],
  [15.1, 20],
  [34.1, 35],
  [51, 60],
])("a load that needs %d A takes the standard breaker of %d A", (needed, standard) => {
  // NEC 240.6(A): 15, 20, 25, 30, 35, 40, 45, 50, 60 A (from memory)
  expect(of({ pump_nameplate: needed / 1.25 }).figure("breaker_standard")).toBe(standard);
});
