import type { BookRow } from "../../engine/template/book-layout.js";
import { wordsIn } from "../../engine/template/index.js";
import { otherLines } from "../parts/materials/other-lines.js";
import { pipeLines } from "../parts/materials/pipe-lines.js";

/** Item codes that the other sheets start from, with what they stand for. */
const usual: readonly [string, string, string][] = [
  ["liner-45mil", "liner, 45 mil, cut from the roll", "ft2"],
  ["underlayment", "underlayment", "ft2"],
  ["seam-tape", "seam tape", "ft"],
  ["crate", "storage crate", "each"],
  ["vault", "pump vault", "each"],
  ["vault-extension", "extension ring of the vault", "each"],
  ["fill-valve", "fill valve with backflow preventer", "each"],
  ["fill-pipe", "fill pipe", "ft"],
  ["sand-bedding", "bedding sand", "yd3"],
  ["fill-soil", "soil brought in, delivered", "yd3"],
  ["stone-lip", "lip stones", "ton"],
  ["stone-boulder", "wall boulders", "ton"],
  ["stone-cobble", "cobble", "ton"],
  ["gravel-washed", "washed gravel", "ton"],
  ["stone-basin", "stone around the crates", "ton"],
  ["stone-wall", "wall stone", "ton"],
  ["wall-block", "wall block", "each"],
  ["gravel-base", "base gravel", "yd3"],
];

/** Every item that a new bid may ask for; the office fills in cost, supplier and dates. */
export const starterItems: readonly BookRow[] = [
  ...usual.map(([code, description, unit]) => ({ code, description, unit })),
  ...[...pipeLines, ...otherLines].map(({ code, what, unit }) => ({
    code,
    description: wordsIn(what, "us"),
    unit,
  })),
].map((row) => ({ ...row, tax_class: "taxable" }));
