import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { calculateFast } from "../../engine/evaluate/calculate.js";
import type { PriceBook } from "../../engine/job/price-book.js";
import { readPriceBook } from "../../engine/job/read-price-book.js";
import type { JobRecord } from "../../engine/job/record.js";
import { valuesOf } from "../../engine/job/values.js";
import { modelOf } from "../../engine/template/models.js";
import { waterfall } from "../../sheets/templates/waterfall.js";
import { demoFolder } from "../support/demo.js";

const model = modelOf(waterfall, "us");
let demo: JobRecord;
let book: PriceBook;

beforeAll(async () => {
  demo = JSON.parse(await readFile(join(demoFolder, "hillside-stream.json"), "utf8"));
  book = await readPriceBook(join(demoFolder, "price-book.json"), waterfall.prices ?? []);
});

/** The checks that say no, columns by name. */
function failing(changed: Record<string, unknown>): Set<string> {
  const job = { ...demo, inputs: { ...demo.inputs, ...changed } } as JobRecord;
  const values = calculateFast(model, valuesOf(model, job, book));
  return new Set(
    model.cells
      .filter(({ declaration, index }) => declaration.kind === "check" && values[index] !== true)
      .map(({ name }) => name),
  );
}

const rows = (table: string) => demo.inputs[table] as readonly Record<string, unknown>[];
const firstRow = (table: string, changed: Record<string, unknown>) => ({
  [table]: rows(table).map((row, i) => (i === 0 ? { ...row, ...changed } : row)),
});

const gravel = {
  name: "gravel",
  code: "gravel-washed",
  covers: "stream bed",
  share: 1,
  width: 0,
  thickness: 0.25,
  voids: 0.4,
  rock: "field stone",
  stone_length: 0.1,
  stone_width: 0.1,
  stone_height: 0.1,
};

/** Each: the check, and a change of the demo job that must make it say no. */
const cases: [string, () => Record<string, unknown>][] = [
  ["basin_holds", () => ({ basin_length: 3, basin_width: 3, basin_depth: 2 })],
  ["basin_not_oversize", () => ({ basin_length: 30, basin_width: 15 })],
  ["rim_reckoned", () => ({ rim_above_water: 0 })],
  ["rain_held", () => ({ design_rain: 12 })],
  ["air_gap_enough", () => ({ air_gap: 0.5 })],
  ["dig_protected", () => ({ basin_depth: 6 })],
  ["spoil_back", () => ({ spoil_setback: 1 })],
  ["machine_lifts", () => ({ machine_chart: [{ reach: 14, lift: 300 }] })],
  ["chart_taken_over", () => ({ chart_is_ours: false })],
  ["rain_looked_up", () => ({ rain_is_local: false })],
  ["faces_have_stone", () => ({ stones: [gravel] })],
  ["falls.name_alone", () => firstRow("falls", { name: "Terrace fall" })],
  ["falls.has_drop", () => firstRow("falls", { drop: 0 })],
  ["main_not_too_fast", () => ({ main_size: "2 in" })],
  ["pump_reaches", () => ({ pump_choice: "P-20" })],
  ["pump_has_reserve", () => ({ pump_choice: "P-90", head_reserve: 0.5 })],
  ["pipe_counted", () => firstRow("outlets", { pipe_size: "2-1/2 in" })],
];

describe("a check that cannot fail is no check", () => {
  test.each(cases)("%s", (name, changed) => {
    expect(failing(changed())).toContain(name);
  });
});
