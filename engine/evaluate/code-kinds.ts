import type { Tree } from "../formula/tree.js";
import { cellOf, columnOf, type Model } from "../template/model.js";

/** What the code of a tree surely comes to, where it meets no error. */
export type Kind = "number" | "yesno";

const comparisons: readonly string[] = ["=", "<>", "<", "<=", ">", ">="];

/** Functions of which every result is a number. */
const numeric: ReadonlySet<string> = new Set(
  "SUM MIN MAX SUMPRODUCT COUNTIF COUNTIFS MATCH ABS SQRT SIGN MOD INT ROUND ROUNDUP ROUNDDOWN EXP LN LEN".split(
    " ",
  ),
);

const questions: ReadonlySet<string> = new Set("AND OR NOT ISERROR ISNUMBER ISBLANK".split(" "));

/**
 * The kind of a tree, where it is sure: then its code needs no question at each operation. Of cells those with a formula
 * are sure, since the compiler checks what it comes to; inputs may be blank, or hold what somebody typed.
 */
export function kindOf(model: Model, tree: Tree): Kind | undefined {
  switch (tree.kind) {
    case "number":
    case "negate":
    case "percent":
    case "convert":
      return "number";
    case "boolean":
      return "yesno";
    case "binary":
      if (tree.operator === "&") return undefined;
      return comparisons.includes(tree.operator) ? "yesno" : "number";
    case "call":
      return ofCall(model, tree);
    case "scalar":
      return cellOf(model, tree, 0).native === undefined
        ? undefined
        : ofCells(cellOf(model, tree, 0));
    case "own":
    case "column": {
      const { cells } = columnOf(model, tree.table, tree.column);
      const [first] = cells;
      return first && cells.every(({ native }) => native !== undefined)
        ? ofCells(first)
        : undefined;
    }
    default:
      return undefined;
  }
}

function ofCall(model: Model, { name, args }: Extract<Tree, { kind: "call" }>): Kind | undefined {
  if (numeric.has(name)) return "number";
  if (questions.has(name)) return "yesno";
  if (name !== "IF") return undefined;
  const [, yes, no] = args as [Tree, Tree, Tree];
  const kind = kindOf(model, yes);
  return kind === kindOf(model, no) ? kind : undefined;
}

/** Only numbers: what is a yes or no by declaration may come to a number all the same. */
function ofCells({
  declaration: { quantity },
}: {
  readonly declaration: { readonly quantity: { readonly kind: string } };
}): Kind | undefined {
  return quantity.kind === "number" ? "number" : undefined;
}
