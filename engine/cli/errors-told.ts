import { type RootError, rootInWords } from "../job/errors-in-cells.js";

const mostRoots = 5;

/** What to say of a job in which cells hold errors; nothing where none does. */
export function errorsTold(roots: readonly RootError[]): string[] {
  if (roots.length === 0) return [];
  const cells = roots.reduce((sum, one) => sum + one.cells, 0);
  const shown = roots.slice(0, mostRoots).map((root) => `  ${rootInWords(root)}`);
  const more = roots.length - shown.length;
  const first = roots[0] as RootError;
  return [
    `the bid does not stand: ${cells === 1 ? "1 cell is" : `${cells} cells are`} in error. ${roots.length === 1 ? "It begins" : "They begin"} with`,
    ...shown,
    ...(more > 0 ? [`  and ${more} more`] : []),
    `Correct the inputs that it needs: rillbook trace <job> "${first.cell.id}" shows them.`,
  ];
}

/** The same for programs. */
export const errorsAsJson = (roots: readonly RootError[]) =>
  roots.map(({ cell, code, cells }) => ({ name: cell.id, sheet: cell.sheet, error: code, cells }));
