import type { Quantity, UnitSystem } from "../units/quantity.js";
import { unitNamed } from "../units/unit.js";
import { parse } from "./parse.js";
import type { Tree } from "./tree.js";
import { plain, type Type, typeOfQuantity, typeOfUnit } from "./type.js";

/**
 * What a parameter or result is: a quantity, which the unit checker follows through
 * the body; or the name of a unit, for an empirical formula whose body works on bare
 * numbers in stated units.
 */
export type Measure = Quantity | string;

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
 * Declares a named formula.
 *
 * @param name upper case, not a spreadsheet function's
 * @param parameters each name with its quantity, or its unit where the formula is empirical
 * @param source the standard, handbook or derivation it comes from
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

/** The type in which an argument is handed over, or the result comes back. */
export function outsideType(measure: Measure, system: UnitSystem): Type {
  if (typeof measure === "string") return typeOfUnit(unitNamed(measure));
  return typeOfQuantity(measure, system);
}

/** The type that the body sees: a bare number where the measure is a unit. */
export function insideType(measure: Measure, system: UnitSystem): Type {
  return typeof measure === "string" ? plain : typeOfQuantity(measure, system);
}

/** `flow in gal/min`: for messages and the list of names. */
export function describeMeasure(measure: Measure): string {
  return typeof measure === "string" ? measure : measure.name;
}
