import type { CellDeclaration } from "./declare.js";

/** Does a message stand beside an input outside of tables? Where nothing can be wrong with it, none does. */
export function hasStatus(cell: CellDeclaration): boolean {
  if (cell.kind !== "input" || cell.quantity.kind === "yesno") return false;
  return !(cell.quantity.kind === "text" && cell.optional && cell.choices === undefined);
}
