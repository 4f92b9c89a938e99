import { natives } from "./functions/index.js";
import { type Tree, walk } from "./tree.js";

/** Functions that are not on the list and that people would write: what is wrong with each and what to write. */
const neverUsed: ReadonlyMap<string, string> = new Map([
  [
    "IFERROR",
    "turns any error into a figure: write PICK_OR(column, keys, key, otherwise) where a key may be missing; an error elsewhere must stay one",
  ],
  [
    "SUMIF",
    "passes over rows in error and reads * and < in texts: write SUM_WHERE(column, keys, key)",
  ],
  ["SUMIFS", "passes over rows in error: write SUMPRODUCT((first>0)*(second=wanted),column)"],
  [
    "NEGBINOM.DIST",
    "is written as another function where some programs save it: write BINOM.DIST(failures, failures+successes, 1-chance, TRUE)",
  ],
  ["NORM.S.DIST", "is not known to every program"],
  ["COUNT", "passes over errors: write SUMPRODUCT((column>0)*1), or add up IF(ISBLANK(cell),0,1)"],
]);

/**
 * What is wrong with a function that turns an error into a plausible figure, or on which programs
 * differ, and what to write; undefined for others. The named look-ups (lookups.ts) may use such a
 * function where it is safe.
 */
export const whyRefused = (name: string): string | undefined =>
  neverUsed.get(name) ?? natives.get(name)?.refused;

/**
 * Why a formula of a template is refused as written, named formulas closed, or undefined where nothing
 * in it swallows errors. What a named formula does with its parameters shows when it is open (`ofNoCell`).
 */
export function swallows(tree: Tree): string | undefined {
  for (const node of walk(tree)) {
    if (node.kind !== "call") continue;
    const refused = whyRefused(node.name);
    if (refused !== undefined) return `${node.name} ${refused}`;
  }
  return ofNoCell(tree);
}

/** Why a formula is refused that asks of a calculation what only a cell can be asked, such as ISBLANK. */
export function ofNoCell(tree: Tree): string | undefined {
  for (const node of walk(tree)) {
    if (node.kind !== "call") continue;
    const reason = natives.get(node.name)?.ofCell;
    const kind = node.args[0]?.kind ?? "";
    if (reason !== undefined && !["scalar", "own", "name", "parameter"].includes(kind)) {
      return `${node.name} ${reason}`;
    }
  }
  return undefined;
}
