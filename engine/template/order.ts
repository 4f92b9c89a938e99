import { referencesOf, type Tree } from "../formula/tree.js";
import { areaCells } from "./area.js";
import { type Cell, cellOf, columnOf, type Model } from "./model.js";

/** The cells that a formula reads, from within its row; those of what it reads twice stand once. */
export function precedents(model: Model, tree: Tree, row: number): Cell[] {
  const found: Cell[] = [];
  for (const reference of referencesOf(tree)) {
    if (reference.kind === "column") {
      for (const cell of columnOf(model, reference.table, reference.column).cells) found.push(cell);
    } else if (reference.kind === "area") {
      for (const cell of areaCells(model, reference)) found.push(cell);
    } else found.push(cellOf(model, reference, row));
  }
  return found;
}

/** Sorts the formula cells so that each follows what it reads; tells each circle as a path. */
export function calculationOrder(model: Model): { order: Cell[]; cycles: string[] } {
  const order: Cell[] = [];
  const cycles: string[] = [];
  const state = new Uint8Array(model.cells.length); // 1: on the path, 2: done
  const path: Cell[] = [];
  const visit = (cell: Cell): void => {
    if (state[cell.index] === 2 || cell.native === undefined) return;
    if (state[cell.index] === 1) {
      const circle = [...path.slice(path.indexOf(cell)), cell].map(({ id }) => id);
      cycles.push(`The formulas go in a circle: ${circle.join(" -> ")}.`);
      return;
    }
    state[cell.index] = 1;
    path.push(cell);
    for (const needed of precedents(model, cell.native, cell.row ?? 0)) {
      if (cycles.length < 5) visit(needed);
    }
    path.pop();
    state[cell.index] = 2;
    order.push(cell);
  };
  for (const cell of model.cells) visit(cell);
  return { order, cycles };
}
