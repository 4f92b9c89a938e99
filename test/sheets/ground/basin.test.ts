import { readFile } from "node:fs/promises";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { errorsIn, stream, work } from "./bench.js";

const gallons = 1728 / 231;

describe("a basin worked by hand", () => {
  // 12 x 8 x 3.5 ft; crates 27 x 16 x 17 in, 4 in from the sides, 6 in under the top
  const { number, value } = work(stream, { judged: true });

  test("crates: 5 along, 5 across, 2 layers, one place a layer for the vault", () => {
    expect(Math.floor((12 * 12 - 8) / 27)).toBe(5);
    expect(Math.floor((8 * 12 - 8) / 16)).toBe(5);
    expect(Math.floor((3.5 * 12 - 6) / 17)).toBe(2);
    expect(["crate_columns", "crate_rows", "crate_layers"].map(number)).toEqual([5, 5, 2]);
    expect(number("crates_needed")).toBe((5 * 5 - 1) * 2);
  });

  test("water held: crates 95% open, the vault, stone at 40%", () => {
    const plan = 12 * 8;
    const crates = 24 * ((27 * 16) / 144);
    const vault = (27 * 16) / 144;
    const top = (2 * 17) / 12;
    const below = crates * 0.95 + vault + (plan - crates - vault) * 0.4;
    const above = vault + (plan - vault) * 0.4;
    expect(number("basin_water_held")).toBeCloseTo((below * top + above * (3 - top)) * gallons, 6);
    expect(number("below_pump_minimum")).toBeCloseTo(below * 0.5 * gallons, 6);
    expect(number("level_at_rest")).toBeCloseTo(3, 9);
  });

  test("water needed: stream, pipe, dead water, four days", () => {
    const needed = 300 + 40 + number("below_pump_minimum") + 4 * number("loss_a_day");
    expect(number("basin_water_needed")).toBeCloseTo(needed, 6);
    // 0.5 gallons of each thousand of 60 gal/min through the day
    expect(number("splash_a_day")).toBeCloseTo((60 * 1440 * 0.5) / 1000, 6);
    const wet = 18 * 3 + 12 * 4 + 3 * 2 + 4 * 1.5;
    const evaporated = ((number("evaporation_rate") / 12) * wet * 1728) / 231;
    expect(number("evaporation_a_day")).toBeCloseTo(evaporated, 6);
    expect(value("basin_holds")).toBe(true);
  });

  test("rain: 4 in on basin and stream to the top of its banks", () => {
    const caught = (4 / 12) * (96 + 18 * 4 + 12 * 5) * gallons;
    expect(number("rain_caught")).toBeCloseTo(caught, 6);
    const room = 0.5 * (3 + 93 * 0.4) * gallons;
    expect(number("rain_overflow")).toBeCloseTo(caught - room, 6);
    expect(value("rain_held")).toBe(false);
  });

  test("dig: the liner lies on the cut, so no more is dug than basin and bedding", () => {
    expect(number("basin_dig")).toBeCloseTo((12 * 8 * (3.5 + 2 / 12)) / 27, 9);
    expect(number("basin_backfill")).toBe(0);
  });

  test("dig: a foot of working room, 2 in of bedding", () => {
    const { number } = work({ ...stream, working_room: 1 });
    const dig = 14 * 10 * (3.5 + 2 / 12);
    expect(number("basin_dig")).toBeCloseTo(dig / 27, 9);
    const backfill = dig - 96 * 3.5 - (14 * 10 * 2) / 12;
    expect(number("basin_backfill")).toBeCloseTo(backfill / 27, 9);
  });

  test("dig on a slope: 2 ft higher uphill, a wedge over 12 by 8 ft, not filled again", () => {
    const sloped = work({ ...stream, ground_over_rim: 2 });
    expect(sloped.number("dig_deepest")).toBeCloseTo(3.5 + 2 / 12 + 2, 9);
    expect(sloped.number("dig_volume") - number("dig_volume")).toBeCloseTo((12 * 8) / 27, 9);
    expect(sloped.number("basin_backfill")).toBe(0);
  });
});

test("the demo office book sells the crate and the vault that the sheet lays", async () => {
  const book = JSON.parse(
    await readFile(new URL("../../../sheets/demo/office-book.json", import.meta.url), "utf8"),
  ) as { tables: { items: { code: string; description: string }[] } };
  const { number, value } = work(stream);
  const described = (code: unknown) =>
    book.tables.items.find((item) => item.code === code)?.description;
  const size = (...names: string[]) => names.map((name) => `${number(name)} in`).join(" by ");
  expect(described(value("crate_code"))).toContain(
    size("crate_length", "crate_width", "crate_height"),
  );
  expect(described(value("vault_code"))).toContain(size("vault_length", "vault_width"));
});

test("half the running hours lose half the water", () => {
  const whole = work({ ...stream, hours_a_day: 24 });
  const half = work({ ...stream, hours_a_day: 12 });
  expect(half.number("loss_a_day")).toBeCloseTo(whole.number("loss_a_day") / 2, 9);
});

test("temperatures in C and in F say the same", () => {
  const f = work({ ...stream, water_temperature: 77, air_temperature: 86 });
  const c = work({
    ...stream,
    ...{ temperature_scale: "C", water_temperature: 25, air_temperature: 30 },
  });
  expect(c.number("evaporation_rate")).toBeCloseTo(f.number("evaporation_rate"), 12);
});

test("a pan of 0.3 in a day at 0.7 evaporates 0.21 in", () => {
  expect(work({ ...stream, evaporation_method: "pan" }).number("evaporation_rate")).toBeCloseTo(
    0.21,
    12,
  );
});

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const basins = fc.record({
  basin_length: between(2, 40),
  basin_width: between(2, 30),
  basin_depth: between(1, 9),
  basin_freeboard: between(0, 11),
  crate_voids: between(0.3, 0.99),
  override_porosity: between(0.1, 0.6),
  vaults_needed: fc.integer({ min: 0, max: 3 }),
  days_between_fills: fc.integer({ min: 0, max: 40 }),
  stream_water: between(0, 2000),
  drain_back: between(0, 200),
  pump_minimum_water: between(0, 24),
});

describe("any basin", () => {
  test("holds what it needs or its check fails, and its levels agree with its water", () => {
    fc.assert(
      fc.property(basins, (basin) => {
        const worked = work({ ...stream, ...basin });
        const { number, value } = worked;
        expect(errorsIn(worked)).toEqual([]);
        const [held, needed] = [number("basin_water_held"), number("basin_water_needed")];
        expect(value("basin_holds")).toBe(held >= needed);
        if (held < needed) expect(number("checks_failed")).toBeGreaterThan(0);
        expect(held).toBeLessThanOrEqual(
          number("basin_plan") * number("full_depth") * gallons + 1e-6,
        );
        expect(number("level_at_rest")).toBeCloseTo(number("full_depth"), 6);
        expect(number("basin_stone_volume")).toBeGreaterThanOrEqual(-1e-9);
        expect(number("basin_backfill")).toBeGreaterThanOrEqual(-1e-9);
      }),
      { numRuns: 40 },
    );
  });

  test("that holds enough still runs on the last of its days", () => {
    fc.assert(
      fc.property(basins, (basin) => {
        const { number, value } = work({ ...stream, ...basin });
        for (let row = 1; row <= 8; row++) {
          const dry = number(`basin_days.dry_days[${row}]`);
          if (value("basin_holds") === true && dry <= basin.days_between_fills) {
            expect(number(`basin_days.running_level[${row}]`)).toBeGreaterThanOrEqual(
              basin.pump_minimum_water / 12 - 1e-9,
            );
          }
        }
        expect(number("basin_days.dry_days[8]")).toBeGreaterThanOrEqual(basin.days_between_fills);
      }),
      { numRuns: 50 },
    );
  });

  test("twice as wide, without crates or vault, holds and digs twice as much", () => {
    const plain = { ...stream, vaults_needed: 0, crate_height: 60, working_room: 0 };
    fc.assert(
      fc.property(between(2, 25), between(2, 25), between(1, 5), (long, wide, deep) => {
        const of = (width: number) =>
          work({ ...plain, basin_length: long, basin_width: width, basin_depth: deep });
        const [one, two] = [of(wide), of(2 * wide)];
        for (const name of ["basin_water_held", "basin_dig", "basin_stone_volume", "rain_room"]) {
          expect(two.number(name) / (2 * one.number(name) || 1)).toBeCloseTo(
            one.number(name) === 0 ? 0 : 1,
            9,
          );
        }
      }),
      { numRuns: 40 },
    );
  });
});
