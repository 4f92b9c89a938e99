import type { OfficeBook } from "../../engine/book/office-book.js";
import { valuesOf } from "../../engine/book/values.js";
import { calculate, calculateFast } from "../../engine/evaluate/calculate.js";
import { Cone } from "../../engine/evaluate/cone.js";
import { saidBy } from "../../engine/evaluate/said-by.js";
import type { Value } from "../../engine/formula/value.js";
import type { InputValues } from "../../engine/job/record.js";
import type { BookRow } from "../../engine/template/book-layout.js";
import { compile } from "../../engine/template/compile.js";
import type { Cell, Model } from "../../engine/template/model.js";
import { template } from "../../engine/template/template.js";
import type { UnitSystem } from "../../engine/units/quantity.js";
import { runningSheet } from "./running.js";
import { waterfallFormulas, waterfallSheet } from "./waterfall-sheet.js";

/** The water sheets alone, with a stand-in for the sheet Job. */
export const water = template({
  name: "water",
  version: 1,
  title: "Water",
  sheets: [
    runningSheet,
    ...(["Falls", "Stream", "Piping", "Balance", "Pump", "Pumps", "Water tables"] as const).map(
      waterfallSheet,
    ),
  ],
  formulas: waterfallFormulas,
  headline: ["total_flow"],
});

const models = new Map<UnitSystem, Model>();

/** The compiled template, once for each system. */
export function waterModel(system: UnitSystem = "us"): Model {
  const known = models.get(system) ?? compile(water, system);
  models.set(system, known);
  return known;
}

/** Values of a job by name: `total_flow`, or `falls.throw` with the row from 1. */
export interface Answers {
  number(name: string, row?: number): number;
  text(name: string, row?: number): string;
  yes(name: string, row?: number): boolean;
  /** What a check that fails says. */
  said(check: string, row?: number): string;
  readonly values: readonly Value[];
  readonly model: Model;
}

const cones = new Map<string, Cone>();

/** What the named cells of the model in US units need, made ready once for many jobs. */
function coneFor(model: Model, asked: readonly string[]): Cone {
  const key = asked.join();
  const known = cones.get(key) ?? new Cone(model, asked);
  cones.set(key, known);
  return known;
}

/** Calculates what the named cells need alone, by the closures: a fraction of the work, for many jobs. US units. */
export function asked(
  names: readonly string[],
  inputs: InputValues,
  pumps: readonly BookRow[],
): Answers {
  const model = waterModel();
  const values = coneFor(model, names).calculate(givenOf(model, inputs, pumps));
  return { ...readers(model, values), values, model };
}

/** Calculates the inputs with the pumps given; by both evaluators unless `fast`. */
export function answersOf(
  inputs: InputValues,
  pumps: readonly BookRow[],
  options: { fast?: boolean; units?: UnitSystem } = {},
): Answers {
  const model = waterModel(options.units ?? "us");
  const given = givenOf(model, inputs, pumps);
  const values = (options.fast ? calculateFast : calculate)(model, given);
  return { ...readers(model, values), values, model };
}

const books = new Map<string, OfficeBook>();

/** A book of these pumps, the same for the same: how a job is filled in under a book is worked out once for each. */
function bookOf(pumps: readonly BookRow[]): OfficeBook {
  const key = JSON.stringify(pumps);
  const known = books.get(key);
  if (known !== undefined) return known;
  const tables = { pumps, places: [] };
  const made = { name: "test", asOf: "2026-11-01", mark: "", tables };
  // random pumps come once only
  if (books.size === 20) books.clear();
  books.set(key, made);
  return made;
}

function givenOf(model: Model, inputs: InputValues, pumps: readonly BookRow[]): Value[] {
  const job = {
    rillbook: 1 as const,
    job: "test",
    template: "water",
    version: 1,
    units: model.system,
    // levels of these tests count from the end of the stream, unless they say otherwise
    inputs: { rim_above_water: 0, ...inputs },
  };
  return valuesOf(model, job, bookOf(pumps));
}

function readers(model: Model, values: readonly Value[]) {
  const value = (name: string, row?: number): Value => {
    const id = row === undefined ? name : `${name}[${row}]`;
    const cell = model.byId.get(id);
    if (cell === undefined) throw new Error(`No cell ${id}`);
    return values[cell.index] as Value;
  };
  const typed = <T>(kind: string, name: string, row?: number): T => {
    const found = value(name, row);
    if (typeof found !== kind) throw new Error(`${name} is ${String(found)}, not a ${kind}`);
    return found as T;
  };
  return {
    number: (name: string, row?: number) => typed<number>("number", name, row),
    text: (name: string, row?: number) => typed<string>("string", name, row),
    yes: (name: string, row?: number) => typed<boolean>("boolean", name, row),
    said: (name: string, row?: number) =>
      String(
        saidBy(model, model.byId.get(row === undefined ? name : `${name}[${row}]`) as Cell, values),
      ),
  };
}
