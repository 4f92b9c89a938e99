/** What a trade's sheets are written with. */
export { columnOf, formula, oneLike } from "../formula/named-formula.js";
export * from "../units/quantity.js";
export type { Reader } from "../units/spelled.js";
export { wordsIn } from "./by-system.js";
export * from "./declare.js";
export { panel, place, row } from "./panel.js";
export type { Across, PaperLook } from "./paper.js";
export { formulaInRow, sentenceInRow } from "./row-sentence.js";
export { type Template, template } from "./template.js";
