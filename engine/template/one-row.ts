import { mapParts, type Tree } from "../formula/tree.js";
import { columnOf, type Model } from "./model.js";

/**
 * The tree as a workbook holds it: what is picked from a column of one row is that cell where the place is 1,
 * since Gnumeric gives #REF! for `INDEX` of a single cell. At any other place `INDEX` gives the error that it
 * gives in every program.
 */
export function pickedFromOneRow(model: Model, tree: Tree): Tree {
  const inner = mapParts(tree, (part) => pickedFromOneRow(model, part));
  if (inner.kind !== "call" || inner.name !== "INDEX") return inner;
  const [column, place] = inner.args as [Tree, Tree];
  if (column.kind !== "column") return inner;
  if (columnOf(model, column.table, column.column).cells.length > 1) return inner;
  if (place.kind === "number" && place.value === 1) return column;
  const first: Tree = {
    kind: "binary",
    operator: "=",
    left: place,
    right: { kind: "number", value: 1 },
  };
  return { kind: "call", name: "IF", args: [first, column, inner] };
}
