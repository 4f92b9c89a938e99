import type { TableBlock } from "./declare.js";

/**
 * Are the rows that a table opens with only a start, which other rows replace? They are where
 * people tell rows apart by an input; a published or calculated first column fixes them, and so
 * does a table whose rows are all in use.
 */
export function hasOwnRows({ data, filled, columns }: TableBlock): boolean {
  const first = Object.values(columns)[0];
  return data !== undefined && filled !== undefined && first?.kind === "input";
}
