import { type Tree, walk } from "./tree.js";

/**
 * Functions that turn an error into a plausible figure, or on which programs differ: what is
 * wrong with each and what to write. The named look-ups (lookups.ts) may use them where it is safe.
 */
export const refusedFunctions: ReadonlyMap<string, string> = new Map([
  [
    "IFERROR",
    "turns any error into a figure: write PICK_OR(column, keys, key, otherwise) where a key may be missing; an error elsewhere must stay one",
  ],
  [
    "ISERROR",
    "turns any error into a yes: only the sheet Checks may ask for errors; leave an error an error",
  ],
  [
    "COUNTIF",
    "passes over rows in error and reads * and < in texts: write COUNT_WHERE(keys, key), LISTED(keys, key), or SUMPRODUCT((column>0)*1)",
  ],
  ["COUNTIFS", "passes over rows in error: write SUMPRODUCT((first>0)*(second=wanted))"],
  [
    "SUMIF",
    "passes over rows in error and reads * and < in texts: write SUM_WHERE(column, keys, key)",
  ],
  ["SUMIFS", "passes over rows in error: write SUMPRODUCT((first>0)*(second=wanted),column)"],
  [
    "MAXIFS",
    "is 0 in some programs and an error in others where no row matches: write LARGEST_WHERE(column, keys, key)",
  ],
  [
    "MINIFS",
    "is 0 in some programs and an error in others where no row matches: write LEAST_WHERE(column, keys, key)",
  ],
  [
    "NEGBINOM.DIST",
    "is written as another function where some programs save it: write BINOM.DIST(failures, failures+successes, 1-chance, TRUE)",
  ],
  ["NORM.S.DIST", "is not known to every program"],
  ["COUNT", "passes over errors: write SUMPRODUCT((column>0)*1), or add up IF(ISBLANK(cell),0,1)"],
]);

/** Tests that are about a cell: of a calculation they would swallow an error. */
const ofCells: ReadonlyMap<string, string> = new Map([
  [
    "ISNUMBER",
    "takes a cell, since it says no to an error in a calculation: write LISTED(keys, key) to ask for a key",
  ],
  ["ISBLANK", "takes a cell, since it says no to an error in a calculation"],
]);

/** Why a formula of a template is refused, or undefined where nothing in it swallows errors. */
export function swallows(tree: Tree): string | undefined {
  for (const node of walk(tree)) {
    if (node.kind !== "call") continue;
    const refused = refusedFunctions.get(node.name);
    if (refused !== undefined) return `${node.name} ${refused}`;
    const reason = ofCells.get(node.name);
    const of = node.args[0];
    if (reason !== undefined && of?.kind !== "scalar" && of?.kind !== "own") {
      return `${node.name} ${reason}`;
    }
  }
  return undefined;
}
