import { count, number } from "../units/quantity.js";
import { formula, type NamedFormula } from "./named-formula.js";

/** Roundings that every template can use. */
export const roundings: readonly NamedFormula[] = [
  formula(
    "WHOLE_UP",
    "The next whole number up: a millionth over a whole one is not another",
    { size: number },
    count,
    "ROUNDUP(ROUND(size,6),0)",
    "arithmetic; without the inner rounding 110.0000000001 would become 111",
  ),
];
