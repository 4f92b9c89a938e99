import { lookups } from "./lookups.js";
import type { NamedFormula } from "./named-formula.js";
import { roundings } from "./rounding.js";

/** The named formulas that every template has without listing them. */
export const everywhere: readonly NamedFormula[] = [...lookups, ...roundings];
