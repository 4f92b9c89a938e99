import type { Quantity, UnitSystem } from "../units/quantity.js";
import { unitNamed } from "../units/unit.js";
import { parse } from "./parse.js";
import type { Tree } from "./tree.js";
import { plain, type Type, typeOfQuantity, typeOfUnit } from "./type.js";

/**
 * What a parameter or result is: a quantity, which the unit checker follows through
 * the body; the name of a unit, for an empirical formula whose body works on bare
 * numbers in stated units; or open, which each call settles.
 */
export type Measure = SettledMeasure | ColumnMeasure | OpenMeasure;

export type SettledMeasure = Quantity | string;

/** A whole column of a quantity, in the unit of that quantity. */
export interface ColumnMeasure {
  readonly kind: "column";
  readonly of: Quantity;
}

/**
 * A measure that each call settles by the column it hands over: what has the same `like`
 * has that column's unit. So one look-up serves lengths, prices and texts.
 */
export interface OpenMeasure {
  readonly kind: "open";
  readonly like: string;
  /** A whole column, and not one value. */
  readonly column: boolean;
  /** Numbers only, no texts and no yes or no. */
  readonly numbers: boolean;
}

/** A parameter that takes a whole column: of a quantity, or of whatever each call hands over. */
export function columnOf(of: Quantity): ColumnMeasure;
export function columnOf(like: string, only?: { numbers?: boolean }): OpenMeasure;
export function columnOf(
  of: Quantity | string,
  only: { numbers?: boolean } = {},
): ColumnMeasure | OpenMeasure {
  if (typeof of !== "string") return Object.freeze({ kind: "column", of });
  return Object.freeze({ kind: "open", like: of, column: true, numbers: only.numbers ?? false });
}

/** A parameter or result of one value, in the unit of the column that is `like` it. */
export const oneLike = (like: string): OpenMeasure =>
  Object.freeze({ kind: "open", like, column: false, numbers: false });

export const isOpen = (measure: Measure): measure is OpenMeasure =>
  typeof measure !== "string" && measure.kind === "open";

export const isColumnMeasure = (measure: Measure): measure is ColumnMeasure =>
  typeof measure !== "string" && measure.kind === "column";

/** A formula of the trade under a name of our own, inlined wherever it is used. */
export interface NamedFormula {
  readonly name: string;
  readonly meaning: string;
  readonly parameters: readonly { readonly name: string; readonly measure: Measure }[];
  readonly result: Measure;
  readonly text: string;
  readonly body: Tree;
  readonly source: string;
}

/**
 * Declares a named formula, which native functions stand for wherever it is used.
 *
 * @param name upper case, not a spreadsheet function's
 * @param parameters each name with its quantity, or its unit where the formula is empirical
 * @param source the standard, handbook or derivation it comes from
 *
 * @example
 * import { formula, quantities } from "rillbook";
 *
 * const { length, count } = quantities;
 * const POSTS = formula(
 *   "POSTS",
 *   "Posts for a run, one more than its fields",
 *   { run: length, apart: length },
 *   count,
 *   "ROUNDUP(ROUND(run/apart,6),0)+1",
 *   "geometry",
 * );
 */
export function formula(
  name: string,
  meaning: string,
  parameters: Readonly<Record<string, Measure>>,
  result: Measure,
  text: string,
  source: string,
): NamedFormula {
  return Object.freeze({
    name,
    meaning,
    parameters: Object.entries(parameters).map(([key, measure]) => ({ name: key, measure })),
    result,
    text,
    body: parse(text),
    source,
  });
}

/** Does a parameter of it take a whole column? */
export const isColumn = (measure: Measure): boolean =>
  isColumnMeasure(measure) || (isOpen(measure) && measure.column);

/** Does it take a whole column? Such a formula is a look-up, shown by what it opens to. */
export const takesColumn = ({ parameters }: NamedFormula): boolean =>
  parameters.some(({ measure }) => isColumn(measure));

/** The type in which an argument is handed over, or the result comes back, unless the call settles it. */
export function outsideType(measure: SettledMeasure | ColumnMeasure, system: UnitSystem): Type {
  if (isColumnMeasure(measure)) return typeOfQuantity(measure.of, system, true);
  if (typeof measure === "string") return typeOfUnit(unitNamed(measure));
  return typeOfQuantity(measure, system);
}

/** The type that the body sees: a bare number where the measure is a unit. */
export function insideType(measure: Measure, system: UnitSystem): Type {
  if (isOpen(measure)) return unlikeAnyOther(measure);
  if (isColumnMeasure(measure)) return typeOfQuantity(measure.of, system, true);
  return typeof measure === "string" ? plain : typeOfQuantity(measure, system);
}

/** A number of a dimension that no quantity has, one for each `like`: a body that mixes two is found out. */
function unlikeAnyOther({ like, column }: OpenMeasure): Type {
  const exponent = [...like].reduce((sum, letter) => sum * 31 + letter.charCodeAt(0), 1000);
  return { kind: "number", dimension: { angle: exponent }, size: 1, range: column };
}

/** `ft/s`, `length` or `a column`: for messages and the list of names. */
export function describeMeasure(measure: Measure): string {
  if (isColumnMeasure(measure)) return `a column of ${measure.of.name}`;
  if (isOpen(measure)) return measure.column ? "a column" : `as ${measure.like}`;
  return typeof measure === "string" ? measure : measure.name;
}
