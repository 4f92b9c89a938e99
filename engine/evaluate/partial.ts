import { toBoolean, toNumber } from "../formula/arithmetic/operators.js";
import { isMany } from "../formula/functions/description.js";
import type { Tree } from "../formula/tree.js";
import { CellError, type Value } from "../formula/value.js";
import { areaCells } from "../template/area.js";
import { type Cell, type CellReference, cellOf, columnOf, type Model } from "../template/model.js";
import { opened } from "./operations.js";
import { operations } from "./runtime.js";
import { treeFunction } from "./tree-value.js";

/** A formula with what does not move put in. */
export interface Residue {
  readonly cell: Cell;
  readonly tree: Tree;
}

/** What is known of a tree: whether nothing that it reads moves, and then its value, where it has one without error. */
interface Known {
  readonly tree: Tree;
  readonly still: boolean;
  readonly value?: Value;
}

/**
 * Formula cells, in order of calculation, where only some given cells move: what the rest comes to is put in as a figure,
 * and of a choice whose condition is known its branch alone is left. Cells that no longer read anything that moves are left
 * out: they keep the value they have. Each operation that is left is the same, on the same values, in the same order, so that
 * the cells come to the same to the last bit (partial evaluation: Jones, Gomard and Sestoft 1993, from memory).
 *
 * @param changing the given cells that move, by index
 * @param base the values of all cells, those of formulas calculated
 */
export function residues(
  model: Model,
  cells: readonly Cell[],
  changing: ReadonlySet<number>,
  base: readonly Value[],
): Residue[] {
  const folder = new Folder(model, changing, base);
  return cells.flatMap((cell) => {
    const tree = folder.residueOf(cell);
    return tree === undefined ? [] : [{ cell, tree }];
  });
}

class Folder {
  /** The cells that move: 1. */
  readonly #moving: Uint8Array;
  /** Of the cell that is being gone through: a part that stands in it several times is folded once. */
  #known = new Map<Tree, Known>();
  #row = 0;

  constructor(
    private readonly model: Model,
    changing: ReadonlySet<number>,
    private readonly base: readonly Value[],
  ) {
    this.#moving = new Uint8Array(model.cells.length);
    for (const index of changing) this.#moving[index] = 1;
  }

  /** What is left of a cell's formula; undefined where it does not move. */
  residueOf({ native, row = 0, index }: Cell): Tree | undefined {
    this.#known = new Map();
    this.#row = row;
    const { tree, still } = this.#fold(native as Tree);
    if (still) return undefined;
    this.#moving[index] = 1;
    return tree;
  }

  #fold(tree: Tree): Known {
    const known = this.#known.get(tree) ?? this.#folded(tree);
    this.#known.set(tree, known);
    return known;
  }

  #folded(tree: Tree): Known {
    switch (tree.kind) {
      case "number":
      case "text":
      case "boolean":
        return { tree, still: true, value: tree.value };
      case "scalar":
      case "own":
        return this.#cell(tree);
      case "column":
        return {
          tree,
          still: !this.#anyMoves(columnOf(this.model, tree.table, tree.column).cells),
        };
      case "area":
        return { tree, still: !this.#anyMoves(areaCells(this.model, tree)) };
      case "negate":
        return this.#ofOne(tree, (value) => -toNumber(value));
      case "percent":
        return this.#ofOne(tree, (value) => toNumber(value) / 100);
      case "convert":
        return this.#fold(opened(tree));
      case "binary":
        return this.#binary(tree);
      case "call":
        return this.#call(tree);
      default:
        throw new Error(`A ${tree.kind} cannot be calculated as one value.`);
    }
  }

  #anyMoves(cells: readonly Cell[]): boolean {
    return cells.some(({ index }) => this.#moving[index] === 1);
  }

  #cell(tree: CellReference): Known {
    const { index } = cellOf(this.model, tree, this.#row);
    if (this.#moving[index] === 1) return { tree, still: false };
    const value = this.base[index] as Value;
    return value instanceof CellError ? { tree, still: true } : held(tree, value);
  }

  #ofOne(
    tree: Extract<Tree, { kind: "negate" | "percent" }>,
    operation: (value: Value) => number,
  ): Known {
    const of = this.#fold(tree.of);
    const left: Tree = { ...tree, of: of.tree };
    if (of.value === undefined) return { tree: left, still: of.still };
    return settled(left, () => operation(of.value as Value));
  }

  #binary(tree: Extract<Tree, { kind: "binary" }>): Known {
    const [l, r] = [this.#fold(tree.left), this.#fold(tree.right)];
    const left: Tree = { ...tree, left: l.tree, right: r.tree };
    if (l.value === undefined || r.value === undefined) {
      return { tree: left, still: l.still && r.still };
    }
    return settled(left, () => operations[tree.operator](l.value as Value, r.value as Value));
  }

  #call(tree: Extract<Tree, { kind: "call" }>): Known {
    const { name, args } = tree;
    if (name === "IF") return this.#choice(tree);
    if (name === "CHOOSE" || name === "INDEX") {
      const picked = this.#picked(tree);
      if (picked !== undefined) return picked;
    }
    // what asks whether a cell is blank, a number or in error asks the cell, and not its value
    const asksCell = name.startsWith("IS");
    const folded = args.map((arg) => this.#fold(arg));
    const left = asksCell ? tree : { ...tree, args: folded.map((one) => one.tree) };
    if (folded.every(({ still }) => still)) {
      // by the very code that calculates the whole formula
      return settled(left, () => treeFunction(this.model, tree)(this.base, this.#row, ""));
    }
    if (name === "AND" || name === "OR") return { tree: shorter(left, folded), still: false };
    return { tree: left, still: false };
  }

  #choice(tree: Extract<Tree, { kind: "call" }>): Known {
    const [test, yes, no] = tree.args as [Tree, Tree, Tree];
    const condition = this.#fold(test);
    if (condition.value !== undefined) {
      const taken = truthOf(condition.value);
      if (taken !== undefined) return this.#fold(taken ? yes : no);
    }
    const all = [condition, this.#fold(yes), this.#fold(no)];
    const still = condition.still || all.every((one) => one.still);
    return { tree: { ...tree, args: all.map((one) => one.tree) }, still };
  }

  /** The branch or the cell that a known place picks; undefined where none is known. */
  #picked({ name, args }: Extract<Tree, { kind: "call" }>): Known | undefined {
    const [first, second] = args as [Tree, Tree];
    const { value } = this.#fold(name === "CHOOSE" ? first : second);
    if (typeof value !== "number") return undefined;
    const place = Math.trunc(value);
    if (name === "CHOOSE") {
      const branch = place < 1 ? undefined : args[place];
      return branch && this.#fold(branch);
    }
    if (first.kind !== "column") return undefined;
    const cell = columnOf(this.model, first.table, first.column).cells[place - 1];
    return cell && this.#cell({ kind: "scalar", name: cell.id });
  }
}

/** A value in the place of a tree, where a formula can hold it as it is. */
function held(tree: Tree, value: Value): Known {
  return { tree: literal(value) ?? tree, still: true, value };
}

function literal(value: Value): Tree | undefined {
  // a zero below zero would lose its sign as it is written
  if (typeof value === "number")
    return Object.is(value, -0) ? undefined : { kind: "number", value };
  if (typeof value === "string") return { kind: "text", value };
  return typeof value === "boolean" ? { kind: "boolean", value } : undefined;
}

/** What a tree that does not move comes to; one that runs into an error is left to run into it. */
function settled(tree: Tree, calculate: () => Value): Known {
  try {
    const value = calculate();
    return value instanceof CellError ? { tree, still: true } : held(tree, value);
  } catch (error) {
    if (error instanceof CellError) return { tree, still: true };
    throw error;
  }
}

function truthOf(value: Value): boolean | undefined {
  try {
    return toBoolean(value);
  } catch (error) {
    if (error instanceof CellError) return undefined;
    throw error;
  }
}

const askers: readonly string[] = ["=", "<>", "<", "<=", ">", ">="];

/** Conditions without those that do not bear on the others, where one is left that cannot be blank. */
function shorter(tree: Extract<Tree, { kind: "call" }>, folded: readonly Known[]): Tree {
  const neutral = tree.name === "AND";
  const args = tree.args.filter((_, i) => folded[i]?.value !== neutral);
  const counts = (arg: Tree) => arg.kind === "binary" && askers.includes(arg.operator);
  return args.some(counts) && !args.some(isMany) ? { ...tree, args } : tree;
}
