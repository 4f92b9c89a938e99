import { codeOf, type FittedTable } from "../book/fill.js";
import { Reach } from "../evaluate/cone.js";
import { narrowed, readersFrom } from "../evaluate/narrowed.js";
import type { Value } from "../formula/value.js";
import { inputPlanOf } from "../job/input-plan.js";
import type { Range } from "../job/record.js";
import type { InputDeclaration } from "../template/declare.js";
import { inSystem } from "../template/implied.js";
import type { Cell, Model } from "../template/model.js";

/** What was put in instead, and by how much the price changes; an error code where it cannot be calculated. */
export interface Trial {
  readonly tried: number;
  readonly price: number | string;
}

/** How the price answers to one input or one figure of the office book. */
export interface Effect {
  /** `lift`, `runs.length[2]`, `items.plank.unit_price`. */
  readonly name: string;
  readonly label: string;
  readonly value: number;
  readonly unit: string;
  /** A tenth less and a tenth more; one less and one more, where the input is a whole number; no further than its limits. */
  readonly less: Trial;
  readonly more: Trial;
}

/** The share by which what is continuous is moved. */
const share = 0.1;

/** The price at both ends of the range that the job states for an input. */
export interface Swing {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly range: Range;
  readonly atLow: number | string;
  readonly atHigh: number | string;
}

/** What moves the price of a job. */
interface Moving {
  /** Of each number that a person or the office book gives, the strongest first; those without any effect are left out. */
  readonly effects: readonly Effect[];
  /** Of each stated range, the widest swing first. */
  readonly swings: readonly Swing[];
}

/**
 * The effect on the price of a tenth less and a tenth more of each number that a person or the office
 * book gives, and of both ends of each stated range. Hundreds of numbers are tried, and most of the office book's rows are of
 * no use to the job: formulas are narrowed to what these numbers move first.
 * @param values all values of the calculated job
 * @param price the price before it is rounded: a step of the rounding is no effect
 */
export function moving(
  model: Model,
  values: readonly Value[],
  price: string,
  tables: readonly FittedTable[],
  ranges: Readonly<Record<string, Range>>,
): Moving {
  const figures = [...inputFigures(model, values), ...bookFigures(model, values, tables)];
  const ranged = Object.keys(ranges).map((name) => model.byId.get(name) as Cell);
  const changing = new Set(
    [...figures.map(({ cell }) => cell), ...ranged].map(({ index }) => index),
  );
  const readers = readersFrom(narrowed(model, [price], changing, values));
  const reach = new Reach(model, values, [price], { readers });
  return {
    effects: effects(model, values, price, figures, reach),
    swings: swings(reach, ranged, ranges),
  };
}

function effects(
  model: Model,
  values: readonly Value[],
  price: string,
  figures: readonly Figure[],
  reach: Reach,
): Effect[] {
  const before = values[model.byId.get(price)?.index as number];
  const trial = ({ index }: Cell, tried: number): Trial => {
    const [after] = reach.under([[index, tried]]);
    return { tried, price: difference(before, after) };
  };
  return figures
    .map(({ name, cell, value }): Effect => {
      const [less, more] = stepped(model, cell, value);
      const { label } = cell.declaration;
      return {
        ...{ name, label, value, unit: cell.unit.name },
        less: trial(cell, less),
        more: trial(cell, more),
      };
    })
    .filter((one) => strength(one) > 0)
    .sort((a, b) => strength(b) - strength(a) || (a.name < b.name ? -1 : 1));
}

function swings(
  reach: Reach,
  cells: readonly Cell[],
  ranges: Readonly<Record<string, Range>>,
): Swing[] {
  const at = ({ index }: Cell, value: number) => {
    const [found] = reach.under([[index, value]]);
    return typeof found === "number" ? found : String(found);
  };
  return cells
    .map((cell): Swing => {
      const range = ranges[cell.id] as Range;
      const { label } = cell.declaration;
      const [atLow, atHigh] = [at(cell, range.low), at(cell, range.high)];
      return { name: cell.id, label, unit: cell.unit.name, range, atLow, atHigh };
    })
    .sort((a, b) => width(b) - width(a) || (a.name < b.name ? -1 : 1));
}

const size = ({ price: by }: Trial) => (typeof by === "number" ? Math.abs(by) : Infinity);

/** A difference in the last digits is none. */
const strength = ({ less, more }: Effect) => {
  const most = Math.max(size(less), size(more));
  return most < 1e-6 ? 0 : most;
};

const width = ({ atLow, atHigh }: Swing) =>
  typeof atLow === "number" && typeof atHigh === "number" ? Math.abs(atHigh - atLow) : Infinity;

interface Figure {
  readonly name: string;
  readonly cell: Cell;
  readonly value: number;
}

const isNumber = ({ declaration: { quantity } }: Cell) => quantity.kind === "number";

function inputFigures(model: Model, values: readonly Value[]): Figure[] {
  return inputPlanOf(model).inputs.flatMap(({ cell }) => {
    const value = values[cell.index];
    return isNumber(cell) && typeof value === "number" ? [{ name: cell.id, cell, value }] : [];
  });
}

function bookFigures(
  model: Model,
  values: readonly Value[],
  tables: readonly FittedTable[],
): Figure[] {
  return tables.flatMap(({ from, keys, columns, capacity }) => {
    const codes = columns[keys.indexOf("code")];
    return columns.flatMap((first, column) =>
      Array.from({ length: capacity }, (_, row): Figure[] => {
        const cell = model.cells[first + row] as Cell;
        const value = values[cell.index];
        if (!isNumber(cell) || typeof value !== "number") return [];
        const code = codes === undefined ? `row ${row + 1}` : codeOf(values[codes + row] ?? null);
        return [{ name: `${from}.${code}.${keys[column]}`, cell, value }];
      }).flat(),
    );
  });
}

/** A tenth less and more, or one, where it must be whole; no further than the limits of an input. */
function stepped(model: Model, cell: Cell, value: number): [less: number, more: number] {
  const {
    least,
    most,
    whole = false,
  } = cell.declaration.kind === "input" ? (cell.declaration as InputDeclaration) : {};
  const step = whole ? 1 : Math.abs(value) * share;
  const limit = (of: number | undefined, none: number) =>
    of === undefined ? none : inSystem(of, cell.declaration, model.system);
  return [
    Math.max(value - step, Math.min(value, limit(least, -Infinity))),
    Math.min(value + step, Math.max(value, limit(most, Infinity))),
  ];
}

function difference(before: Value | undefined, after: Value | undefined): number | string {
  if (typeof before === "number" && typeof after === "number") return after - before;
  return String(after);
}
