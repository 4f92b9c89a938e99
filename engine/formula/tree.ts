/**
 * The formula tree: plain data with a `kind`, frozen when it leaves the parser, the checker, the
 * opener of named formulas or the compiler. The parser makes the nodes of
 * the first group; the checker replaces names by the nodes of the second.
 */
export type Tree =
  | { readonly kind: "number"; readonly value: number; readonly unit?: string }
  | { readonly kind: "text"; readonly value: string }
  | { readonly kind: "boolean"; readonly value: boolean }
  | { readonly kind: "name"; readonly name: string }
  | { readonly kind: "negate"; readonly of: Tree }
  | { readonly kind: "percent"; readonly of: Tree }
  | {
      readonly kind: "binary";
      readonly operator: Operator;
      readonly left: Tree;
      readonly right: Tree;
    }
  | { readonly kind: "call"; readonly name: string; readonly args: readonly Tree[] }
  // after the check of names and units
  | Reference
  | { readonly kind: "parameter"; readonly name: string; readonly column?: true }
  | { readonly kind: "convert"; readonly factor: number; readonly of: Tree };

/** What a name stands for once it is resolved. */
export type Reference =
  | { readonly kind: "scalar"; readonly name: string }
  /** A column of the same row, or with `back: 1` of the row above. */
  | { readonly kind: "own"; readonly table: string; readonly column: string; readonly back: 0 | 1 }
  | { readonly kind: "column"; readonly table: string; readonly column: string }
  /** All cells of a sheet, to look for errors in: `ISERROR(SUM(cells.runs))`. */
  | { readonly kind: "area"; readonly sheet: string };

export type Operator = "+" | "-" | "*" | "/" | "^" | "&" | "=" | "<>" | "<" | "<=" | ">" | ">=";

/**
 * How tightly each operator binds, as spreadsheets have it: comparison, joining,
 * sum, product, power, then the sign (so that -2^2 is 4), then per cent.
 */
export const binding: Readonly<Record<Operator, number>> = {
  "=": 1,
  "<>": 1,
  "<": 1,
  "<=": 1,
  ">": 1,
  ">=": 1,
  "&": 2,
  "+": 3,
  "-": 3,
  "*": 4,
  "/": 4,
  "^": 5,
};
export const signBinding = 6;
export const percentBinding = 7;

/** A whole column, or a parameter that stands for one. */
export const isColumn = (tree: Tree): boolean =>
  tree.kind === "column" || (tree.kind === "parameter" && tree.column === true);

/** The direct parts of a node. */
export function partsOf(tree: Tree): readonly Tree[] {
  switch (tree.kind) {
    case "binary":
      return [tree.left, tree.right];
    case "call":
      return tree.args;
    case "negate":
    case "percent":
    case "convert":
      return [tree.of];
    default:
      return [];
  }
}

/** The same node with its parts replaced by what `change` makes of each. */
export function mapParts(tree: Tree, change: (part: Tree) => Tree): Tree {
  switch (tree.kind) {
    case "binary":
      return { ...tree, left: change(tree.left), right: change(tree.right) };
    case "call":
      return { ...tree, args: tree.args.map(change) };
    case "negate":
    case "percent":
    case "convert":
      return { ...tree, of: change(tree.of) };
    default:
      return tree;
  }
}

/** Every node of a tree, the root first. */
export function walk(tree: Tree): readonly Tree[] {
  const nodes: Tree[] = [];
  gather(tree, nodes);
  return nodes;
}

function gather(tree: Tree, nodes: Tree[]): void {
  nodes.push(tree);
  for (const part of partsOf(tree)) gather(part, nodes);
}

const references = new WeakMap<Tree, readonly Reference[]>();

/** What a tree reads, each thing once, in the order of the formula. All rows of a column share a tree. */
export function referencesOf(tree: Tree): readonly Reference[] {
  const known = references.get(tree);
  if (known !== undefined) return known;
  const found = new Map<string, Reference>();
  for (const node of walk(tree)) {
    if (!isReference(node)) continue;
    const key = keyOf(node);
    if (!found.has(key)) found.set(key, node);
  }
  const all = [...found.values()];
  references.set(tree, all);
  return all;
}

const isReference = (tree: Tree): tree is Reference =>
  tree.kind === "scalar" || tree.kind === "own" || tree.kind === "column" || tree.kind === "area";

function keyOf(reference: Reference): string {
  switch (reference.kind) {
    case "scalar":
      return reference.name;
    case "own":
      return `${reference.table}.${reference.column}[${-reference.back}]`;
    case "column":
      return `${reference.table}.${reference.column}`;
    case "area":
      return `'${reference.sheet}'`;
  }
}

/** The tree with all its nodes frozen, in place. What is frozen already has frozen parts. */
export function frozen(tree: Tree): Tree {
  if (Object.isFrozen(tree)) return tree;
  for (const part of partsOf(tree)) frozen(part);
  if (tree.kind === "call") Object.freeze(tree.args);
  return Object.freeze(tree);
}
