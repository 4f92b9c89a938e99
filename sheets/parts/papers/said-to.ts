import { type CalcDeclaration, calc, type Reader, text } from "../../../engine/template/index.js";

/** Makes the words at a place of a page from a formula, with units as this reader has them. */
export const saidTo =
  (reader: Reader) =>
  (name: string, formula: string): readonly [string, CalcDeclaration] => [name, calc(text, formula, "", { reader })];
