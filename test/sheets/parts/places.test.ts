import { describe, expect, test } from "vitest";
import type { OfficeBook } from "../../../engine/book/office-book.js";
import type { BookRow } from "../../../engine/template/book-layout.js";
import { book, type Changes, changedDemo, failingIn, shown } from "../../support/changed-demo.js";

const local = { weather_is_local: false, storm_is_local: false, rain_is_local: false };
const known = ["weather_known", "storm_known", "rain_known"];
const knownIn = (values: ReturnType<typeof changedDemo>) =>
  known.map((name) => shown(values, name));

const rowOf = (code: string) => book.tables.places?.find((row) => row.code === code) as BookRow;

/** The demo's office book with some figures of a place changed. */
const moved = (code: string, change: BookRow): OfficeBook => ({
  ...book,
  tables: {
    ...book.tables,
    places: (book.tables.places ?? []).map((row) =>
      row.code === code ? { ...row, ...change } : row,
    ),
  },
});

const at = (changed: Changes, prices = book) => changedDemo({ ...local, ...changed }, { prices });

describe("weather by place", () => {
  test("without a place the rules for all jobs hold, and the bid says that they are placeholders", () => {
    const values = at({});
    expect(shown(values, "storm_rain")).toBe(4);
    expect(shown(values, "water_used")).toBe(75);
    expect(shown(values, "rain_months.rain_used[4]")).toBe(10);
    expect(knownIn(values)).toEqual([false, false, false]);
    expect(failingIn(values)).toContain("weather_of_place");
  });

  test.each(["upper-hollow", "dry-flat", "DRY-FLAT"])(
    "%s: its own figures, and no warning",
    (place) => {
      const row = rowOf(place.toLowerCase());
      const values = at({ weather_place: place });
      expect(shown(values, "storm_rain")).toBe(row.design_rain);
      expect(shown(values, "water_used")).toBe(row.water_temperature);
      expect(shown(values, "air_used")).toBe(row.air_temperature);
      expect(shown(values, "humidity_used")).toBe(row.air_humidity);
      expect(shown(values, "wind_used")).toBe(row.wind_speed);
      expect(shown(values, "pan_used")).toBe(row.pan_evaporation);
      const months = Array.from({ length: 12 }, (_, i) =>
        shown(values, `rain_months.rain_used[${i + 1}]`),
      );
      expect(months).toEqual(
        Object.keys(row)
          .filter((key) => /^rain_/.test(key))
          .map((key) => row[key]),
      );
      expect(knownIn(values)).toEqual([true, true, true]);
      expect(failingIn(values)).not.toContain("weather_of_place");
    },
  );

  test("what the job says itself goes before the place; the temperatures go with their scale", () => {
    const values = at({ weather_place: "dry-flat", design_rain: 6, water_temperature: 61 });
    expect(shown(values, "storm_rain")).toBe(6);
    expect(["scale_used", "water_used", "air_used"].map((name) => shown(values, name))).toEqual([
      "F",
      61,
      85,
    ]);
    expect(shown(values, "wind_used")).toBe(rowOf("dry-flat").wind_speed);
    const months = at({ weather_place: "dry-flat", rain_months: [{ rain_days: 7 }] });
    expect(shown(months, "rain_months.rain_used[1]")).toBe(7);
    expect(shown(months, "rain_months.rain_used[2]")).toBe(rowOf("dry-flat").rain_feb);
  });

  test("a new book moves storm, rain days and dry spell of the jobs at that place alone", () => {
    const next = moved("dry-flat", { design_rain: 9, rain_apr: 25, air_humidity: 0.1 });
    for (const name of ["rain_caught", "days_lost", "evaporation_a_day"]) {
      const figure = (place: string, prices: OfficeBook) =>
        shown(at({ weather_place: place }, prices), name) as number;
      expect(figure("dry-flat", next)).toBeGreaterThan(figure("dry-flat", book));
      expect(figure("upper-hollow", next)).toBe(figure("upper-hollow", book));
    }
  });

  test("a place not looked up warns, whatever the flags say", () => {
    const next = moved("dry-flat", { looked_up: false });
    const all = { weather_is_local: true, storm_is_local: true, rain_is_local: true };
    const values = at({ ...all, weather_place: "dry-flat" }, next);
    expect(knownIn(values)).toEqual([false, false, false]);
    expect(failingIn(values)).toContain("weather_of_place");
  });

  test("by pan, a place without its pan evaporation keeps the rule and warns", () => {
    const { pan_evaporation: _, ...rest } = rowOf("dry-flat");
    const prices = { ...book, tables: { ...book.tables, places: [rest] } };
    const values = at({ weather_place: "dry-flat", evaporation_method: "pan" }, prices);
    expect(shown(values, "pan_used")).toBe(0.3);
    expect(shown(values, "weather_known")).toBe(false);
  });
});
