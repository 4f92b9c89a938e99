import type { NamedFormula } from "../formula/named-formula.js";
import type { SheetDeclaration } from "./declare.js";

/** A set of sheets under a name and a version: what a kind of job is estimated with. */
export interface Template {
  readonly name: string;
  readonly version: number;
  readonly title: string;
  readonly sheets: readonly SheetDeclaration[];
  readonly formulas: readonly NamedFormula[];
  /** The cells whose change a person wants to see first: price, flow, head. */
  readonly headline: readonly string[];
}

export function template(declaration: Template): Template {
  return Object.freeze(declaration);
}
