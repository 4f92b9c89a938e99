import type { InputDeclaration, TableBlock } from "./declare.js";

/**
 * Are the rows that a table opens with only a start, which other rows replace? They are where
 * people tell rows apart by an input; a published or calculated first column fixes them, and so
 * does a table whose rows are all in use.
 */
export function hasOwnRows({ data, filled, columns }: TableBlock): boolean {
  const first = Object.values(columns)[0];
  return data !== undefined && filled !== undefined && first?.kind === "input";
}

/**
 * Does a column of a table stand at its default in every row, in use or not? What is chosen for a row that
 * begins on the walk, or among the decisions, does: the row then counts as soon as it has what no default can be for.
 */
export function standsReady(
  { data, filled, columns }: TableBlock,
  { asked, default: usual }: InputDeclaration,
): boolean {
  const first = Object.values(columns)[0];
  if (data !== undefined || filled === undefined || first?.kind !== "input") return false;
  const begins = first.asked === "walk" || first.asked === "decision";
  return asked === "decision" && begins && usual !== undefined;
}
