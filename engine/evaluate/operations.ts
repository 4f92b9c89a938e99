import { conversion } from "../formula/print.js";
import type { Operator, Tree } from "../formula/tree.js";

/** The function of the runtime that calculates each operator. */
export const operations: Readonly<Record<Operator, string>> = {
  "+": "add",
  "-": "subtract",
  "*": "multiply",
  "/": "quotient",
  "^": "raised",
  "&": "joined",
  "=": "equal",
  "<>": "unequal",
  "<": "below",
  "<=": "atMost",
  ">": "above",
  ">=": "atLeast",
};

const signs: Readonly<Partial<Record<Operator, string>>> = {
  ...{ "=": "===", "<>": "!==", "<": "<", "<=": "<=", ">": ">", ">=": ">=" },
};

/** The code of an operator between two that are numbers for sure, as JavaScript writes it. Not of `&`. */
export function betweenNumbers(operator: Operator, left: string, right: string): string {
  if (operator === "/") return `divide(${left},${right})`;
  if (operator === "^") return `power(${left},${right})`;
  const sign = signs[operator];
  return sign === undefined ? `finite(${left}${operator}${right})` : `(${left}${sign}${right})`;
}

/** A conversion as the multiplication or division that the workbook shows. */
export function opened(tree: Extract<Tree, { kind: "convert" }>): Tree {
  const { operator, by } = conversion(tree.factor);
  return { kind: "binary", operator, left: tree.of, right: { kind: "number", value: by } };
}
