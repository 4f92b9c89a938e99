import { aggregates } from "./aggregates.js";
import { conditional } from "./conditional.js";
import { dates } from "./dates.js";
import type { Native } from "./description.js";
import { logic } from "./logic.js";
import { lookup } from "./lookup.js";
import { numbers } from "./numbers.js";
import { rounding } from "./rounding.js";
import { statistics } from "./statistics.js";
import { text } from "./text.js";

export type { Native, NativeFunction, Rules, Typed } from "./description.js";

/**
 * The spreadsheet functions that templates may use, by upper-case name: the check of arguments and
 * units, the printers, both evaluators and hyperformula's overrides go by these descriptions. The
 * values of each are in `test/engine/evaluate/cases`, the cells in `test/office/natives.test.ts`.
 */
export const natives: ReadonlyMap<string, Native> = new Map(
  [numbers, rounding, aggregates, logic, conditional, lookup, text, dates, statistics].flatMap(
    (group) => group.map((one) => [one.name, one] as const),
  ),
);
