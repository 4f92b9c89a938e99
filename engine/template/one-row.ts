import { mapParts, partsOf, type Tree } from "../formula/tree.js";
import { columnOf, type Model } from "./model.js";

/**
 * The tree as a workbook holds it: what is picked from a column of one row is that cell where the place is 1,
 * since Gnumeric gives #REF! for `INDEX` of a single cell. At any other place `INDEX` gives the error that it
 * gives in every program.
 */
export function pickedFromOneRow(model: Model, tree: Tree): Tree {
  // most formulas pick from none, and every one of a bid comes by here
  return picks(model, tree) ? picked(model, tree) : tree;
}

/** Is anything in a tree picked from a column of one row? */
const picks = (model: Model, tree: Tree): boolean =>
  isPick(model, tree) || partsOf(tree).some((part) => picks(model, part));

function isPick(model: Model, tree: Tree): boolean {
  if (tree.kind !== "call" || tree.name !== "INDEX") return false;
  const [column] = tree.args as [Tree];
  return (
    column.kind === "column" && columnOf(model, column.table, column.column).cells.length === 1
  );
}

function picked(model: Model, tree: Tree): Tree {
  const inner = mapParts(tree, (part) => picked(model, part));
  // what is picked from stays the column that it is
  if (inner.kind !== "call" || !isPick(model, inner)) return inner;
  const [column, place] = inner.args as [Tree, Tree];
  if (place.kind === "number" && place.value === 1) return column;
  const first: Tree = {
    kind: "binary",
    operator: "=",
    left: place,
    right: { kind: "number", value: 1 },
  };
  return { kind: "call", name: "IF", args: [first, column, inner] };
}
