import { everywhere } from "../formula/everywhere.js";
import type { NamedFormula } from "../formula/named-formula.js";
import type { Template } from "./template.js";
import { wordFormulas } from "./word-formulas.js";

/** The named formulas that a template may call, by name. */
export function formulasOf(template: Template): ReadonlyMap<string, NamedFormula> {
  const named = [...everywhere, ...template.formulas, ...wordFormulas(template.sheets)];
  return new Map(named.map((one) => [one.name, one]));
}
