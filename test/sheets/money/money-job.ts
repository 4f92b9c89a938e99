import type { OfficeBook } from "../../../engine/book/office-book.js";
import { valuesOf } from "../../../engine/book/values.js";
import { calculate, calculateFast } from "../../../engine/evaluate/calculate.js";
import type { Value } from "../../../engine/formula/value.js";
import type { InputValues, JobRecord } from "../../../engine/job/record.js";
import type { BookRow } from "../../../engine/template/book-layout.js";
import { modelOf } from "../../../engine/template/models.js";
import { wholeOf } from "../../../sheets/parts/whole.js";
import { waterfallParts } from "../../../sheets/templates/waterfall.js";
import { moneyTemplate } from "./stand-in.js";

const quote = { supplier: "a yard", quoted_on: "2026-10-01", good_until: "2027-06-30" };

const item = (code: string, unit: string, cost: number, pack?: number): BookRow => ({
  code,
  description: `item ${code}`,
  unit,
  cost,
  ...(pack === undefined ? {} : { pack }),
  ...quote,
  tax_class: code.startsWith("stone") ? "exempt" : "taxable",
});

export const items: readonly BookRow[] = [
  item("liner-45mil", "ft²", 1.1),
  item("stone-lip", "ton", 300, 1),
  item("pipe-2", "ft", 2, 20),
  item("elbow-90-2", "each", 3),
  item("ball-valve-2", "each", 25),
  item("bulkhead-2", "each", 30),
  item("flex-pipe-2", "ft", 4, 5),
  item("adhesive", "each", 12),
  item("primer", "each", 8),
  item("foam", "each", 17),
  item("gfci-outlet", "each", 70),
  item("breaker", "each", 15),
  item("conduit", "ft", 1.5, 10),
  item("wire-12", "ft", 0.5),
  item("crate", "each", 60),
];

/** The rates of the job worked by hand; those that it does not need are 1. */
const values: Readonly<Record<string, number>> = {
  "wage-foreman": 30,
  "wage-operator": 28,
  "wage-laborer": 20,
  "burden-fica": 7.65,
  "burden-unemployment": 1,
  "burden-compensation": 10,
  "burden-health": 12,
  "burden-vacation": 4,
  "burden-holidays": 2,
  "burden-sick": 2,
  "burden-tools": 1,
  "burden-raises": 2.5,
  "set-out": 0.25,
  dig: 2,
  "liner-laid": 50,
  "pipe-laid": 20,
  "outlet-fitted": 0.5,
  "fall-set-up": 0.2,
  "lip-set": 0.6,
  "boulder-placed": 0.5,
  "start-up": 0.25,
  "clean-up": 0.125,
  "wage-electrician": 40,
  "conduit-run": 30,
  "circuit-fitted": 0.5,
  permit: 80,
  "haul-per-hundred-feet": 12,
  "machine-day": 300,
  "machine-delivery": 200,
  "stone-load": 120,
  "site-day": 50,
  overhead: 10,
};

const rates: readonly BookRow[] = wholeOf(waterfallParts).rates.map(({ code, means, unit }) => ({
  code,
  description: means,
  value: values[code] ?? 1,
  unit,
}));

const books = new WeakMap<readonly BookRow[], OfficeBook>();

/** A book of these items, the same for the same: how a job is filled in under a book is worked out once for each. */
export function book(changed: readonly BookRow[] = items): OfficeBook {
  const known = books.get(changed);
  if (known !== undefined) return known;
  const tables = { items: changed, rates };
  const made = { name: "Book of the test", asOf: "2026-10-15", mark: "none", tables };
  books.set(changed, made);
  return made;
}

/** A small stream with one fall, of 400 ft² of liner and 6 tons of stone. */
export const smallJob: InputValues = {
  bid_date: "2026-11-25",
  start_month: 6,
  stream_length: 20,
  main_length: 30,
  dig_volume: 16,
  liner_area_bought: 400,
  placed_stone: 6,
  site_haul: 0,
  crew_size: 2,
  daily_set_up: 0,
  travel_time: 0,
  rain_stops_work: 1,
  rain_is_local: true,
  electrical_work: "by us",
  panel_distance: 30,
  rounding_step: 25,
  contingency_share: 0.02,
  terms_elsewhere: true,
  falls: [{ name: "the fall", width: 3 }],
  pipe_lines: [{ name: "at the fall", pipe_size: "2 in", length: 10, elbows_90: 2, bore: 2.067 }],
  stones: [{ name: "lip stones", code: "stone-lip", tons: 6 }],
  taxes: [
    { class: "taxable", share: 0.08 },
    { class: "exempt", share: 0 },
  ],
  rain_months: Array.from({ length: 12 }, () => ({ rain_days: 9 })),
  subcontracts: [
    { work: "electric work", by: "an electrician", amount: 500, quoted_until: "2027-06-30" },
  ],
  risks: [{ risk: "rock in the dig", low: 0, likely: 300, high: 1200 }],
};

/** A job of the money sheets alone; `value` looks a cell up, such as `materials.cost[3]`. */
export function moneyJob(inputs: InputValues, prices = book(), judged = false) {
  const model = modelOf(moneyTemplate, "us");
  const job: JobRecord = {
    rillbook: 1,
    job: "test",
    template: moneyTemplate.name,
    version: 1,
    units: "us",
    inputs,
  };
  const given = valuesOf(model, job, prices);
  const found = judged ? calculate(model, given) : calculateFast(model, given);
  const value = (id: string): Value => {
    const cell = model.byId.get(id);
    if (cell === undefined) throw new Error(`no cell ${id}`);
    return found[cell.index] ?? null;
  };
  const figure = (id: string): number => {
    const one = value(id);
    if (typeof one !== "number") throw new Error(`${id} is ${String(one)}`);
    return one;
  };
  const column = (name: string) =>
    model.cells.filter((cell) => cell.name === name).map(({ index }) => found[index] ?? null);
  /** The cell of a column in the row that another column names. */
  const ofLine = (code: string, key: string) => {
    const row = column("materials.code").indexOf(code) + 1;
    return value(`materials.${key}[${row}]`);
  };
  const failed = () =>
    column("check_list.message").filter((message) => message !== "ok" && message !== null);
  return { model, given, found, value, figure, column, ofLine, failed };
}
