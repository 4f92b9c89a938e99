import type { OfficeBook } from "../../../engine/book/office-book.js";
import { valuesOf } from "../../../engine/book/values.js";
import { calculate, calculateFast } from "../../../engine/evaluate/calculate.js";
import { CellError, type Value } from "../../../engine/formula/value.js";
import type { InputValues } from "../../../engine/job/record.js";
import { compile } from "../../../engine/template/compile.js";
import { template } from "../../../engine/template/index.js";
import type { Model } from "../../../engine/template/model.js";
import type { UnitSystem } from "../../../engine/units/quantity.js";
import { waterfallFormulas, waterfallSheet } from "../../support/waterfall-sheet.js";
import { waterStandIn } from "./stand-in.js";

const bench = template({
  name: "ground-bench",
  version: 1,
  title: "The sheets of the ground, with a stand-in for water",
  sheets: [
    waterStandIn,
    ...(["Basin", "Liner", "Stone", "Earthwork"] as const).map(waterfallSheet),
  ],
  formulas: waterfallFormulas,
  headline: ["basin_water_held"],
});

const models = new Map<UnitSystem, Model>();

export function modelIn(units: UnitSystem): Model {
  const known = models.get(units);
  if (known !== undefined) return known;
  const made = compile(bench, units);
  models.set(units, made);
  return made;
}

/** A stream of two reaches and two falls. */
export const stream: InputValues = {
  falls: [
    { name: "top fall", width: 3, drop: 2, throw: 0.8 },
    { name: "low fall", width: 4, drop: 1.5, throw: 0.6 },
  ],
  runs: [
    { name: "upper reach", length: 18, width: 3, bank_height: 1 },
    { name: "lower reach", length: 12, width: 4, bank_height: 1 },
  ],
};

export interface Worked {
  readonly model: Model;
  readonly values: readonly Value[];
  number(id: string): number;
  value(id: string): Value;
}

/** The basin of the bench, where a test says nothing of it. */
const basins = {
  us: { basin_length: 12, basin_width: 8 },
  si: { basin_length: 3.6576, basin_width: 2.4384 },
} as const;

/** One for all jobs: how a job is filled in under a book is worked out once for each. */
const noBook: OfficeBook = { name: "none", asOf: "2026-01-01", mark: "", tables: {} };

export function work(
  inputs: InputValues = stream,
  { units = "us", judged = false }: { units?: UnitSystem; judged?: boolean } = {},
): Worked {
  const model = modelIn(units);
  const given = valuesOf(
    model,
    {
      rillbook: 1,
      job: "bench",
      template: "ground-bench",
      version: 1,
      units,
      inputs: { ...basins[units], ...inputs },
    },
    noBook,
  );
  const values = (judged ? calculate : calculateFast)(model, given);
  const value = (id: string): Value => {
    const cell = model.byId.get(id);
    if (cell === undefined) throw new Error(`No cell ${id}`);
    return values[cell.index] ?? null;
  };
  const number = (id: string): number => {
    const found = value(id);
    if (typeof found === "number") return found;
    throw new Error(`${id} is ${String(found)}, not a number`);
  };
  return { model, values, number, value };
}

/** The ids of the cells that hold an error. */
export const errorsIn = ({ model, values }: Worked): string[] =>
  model.cells.filter(({ index }) => values[index] instanceof CellError).map(({ id }) => id);

/** The places of a job that are dug without the protection they need. */
export function unprotected({ model, value }: Worked): string[] {
  return Array.from({ length: model.tables.get("digs")?.block.rows ?? 0 }, (_, i) => i + 1)
    .filter((row) => value(`digs.protected[${row}]`) !== true)
    .map((row) => String(value(`digs.place[${row}]`)));
}
