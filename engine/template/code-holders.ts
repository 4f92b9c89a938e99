import type { CellDeclaration, TableBlock } from "./declare.js";

/** A cell or a column by its name. */
interface Declared {
  readonly name: string;
  readonly declaration: CellDeclaration;
}

/**
 * The names that hold codes of a table which the office book fills: those of its `usedBy`, and the
 * inputs that say so themselves by `codeOf`. Undefined where nothing holds them, so that the whole
 * table is copied.
 */
export function codeHolders(
  { from, usedBy = [] }: TableBlock,
  cells: Iterable<Declared>,
): ReadonlySet<string> | undefined {
  const names = new Set(usedBy);
  // a table that the office book does not fill is asked about, too
  if (from === undefined) return names.size === 0 ? undefined : names;
  for (const { name, declaration } of cells) {
    if (declaration.kind === "input" && declaration.codeOf === from) names.add(name);
  }
  return names.size === 0 ? undefined : names;
}
