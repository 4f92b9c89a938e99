import { aggregates } from "./aggregates.js";
import type { NativeFunction } from "./arguments.js";
import { conditional } from "./conditional.js";
import { dates } from "./dates.js";
import { lookup } from "./lookup.js";
import { numbers } from "./numbers.js";
import { rounding } from "./rounding.js";
import { statistics } from "./statistics.js";
import { text } from "./text.js";

export type { NativeFunction } from "./arguments.js";

/**
 * The spreadsheet functions that evaluate all their arguments, by upper-case name.
 * Each takes values or ranges and gives a value; each throws a CellError for an error.
 */
export const natives: ReadonlyMap<string, NativeFunction> = new Map(
  [numbers, rounding, aggregates, conditional, lookup, text, dates, statistics].flatMap((family) =>
    Object.entries(family),
  ),
);
