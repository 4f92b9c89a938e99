import type { Tree } from "../formula/tree.js";
import { opened, operations } from "./operations.js";

/** Writes what stands in a loop over rows. */
export interface RowWriter {
  /** A tree that has one value. */
  readonly single: (tree: Tree) => string;
  /** Where a column stands in the list of values. */
  readonly place: (tree: Extract<Tree, { kind: "column" }>) => { from: number; rows: number };
}

/** An expression of one row, and whether its value is known to be a number or a truth value. */
interface RowCode {
  readonly code: string;
  readonly kind: "number" | "yesno" | "any";
}

/**
 * The sum of products over the rows of columns as one loop, without a list for each step. Of several errors
 * the one that shows is that of the lists, one after another: `lists`, which is calculated where the loop
 * meets any. Gives `lists` itself where there is no loop to write.
 */
export function productsByRow(args: readonly Tree[], writer: RowWriter, lists: string): string {
  const loop = new Loop(writer);
  const factors = args.map((arg) => loop.factor(arg));
  if (loop.rows === undefined || factors.includes(undefined)) return lists;
  const singles = loop.singles.map((code, i) => `const s${i}=${code};`).join("");
  return `(()=>{try{${singles}let t=0;for(let i=0;i<${loop.rows};i++)t+=${factors.join("*")};return finite(t);}catch{return ${lists};}})()`;
}

const arithmetic: readonly string[] = ["+", "-", "*"];
const comparisons: readonly string[] = ["=", "<>", "<", "<=", ">", ">="];

class Loop {
  /** What is the same for every row is calculated once, before. */
  readonly singles: string[] = [];
  #rows: number | undefined;
  #uneven = false;

  constructor(private readonly writer: RowWriter) {}

  /** Of all columns; undefined where there is none, or they differ. */
  get rows(): number | undefined {
    return this.#uneven ? undefined : this.#rows;
  }

  /** An argument as a factor of the row: what is no number counts as zero. Undefined where it is no column. */
  factor(tree: Tree): string | undefined {
    if (!hasColumn(tree)) return undefined;
    const row = this.#row(tree);
    if (row?.kind === "number") return row.code;
    // an error in it is one all the same
    return row?.kind === "any" ? `counted(${row.code})` : undefined;
  }

  #row(tree: Tree): RowCode | undefined {
    switch (tree.kind) {
      case "column":
        return this.#column(tree);
      case "convert":
        return this.#row(opened(tree));
      case "negate": {
        const of = this.#row(tree.of);
        return of && { code: `(-${number(of)})`, kind: "number" };
      }
      case "binary":
        return this.#binary(tree);
      case "number":
        return { code: `(${tree.value})`, kind: "number" };
      default:
        this.singles.push(this.writer.single(tree));
        return { code: `s${this.singles.length - 1}`, kind: "any" };
    }
  }

  #column(tree: Extract<Tree, { kind: "column" }>): RowCode {
    const { from, rows } = this.writer.place(tree);
    this.#uneven ||= this.#rows !== undefined && this.#rows !== rows;
    this.#rows = rows;
    return { code: `v[${from}+i]`, kind: "any" };
  }

  #binary({ operator, left, right }: Extract<Tree, { kind: "binary" }>): RowCode | undefined {
    const [l, r] = [this.#row(left), this.#row(right)];
    if (l === undefined || r === undefined || operator === "&") return undefined;
    if (arithmetic.includes(operator)) {
      return { code: `finite(${number(l)}${operator}${number(r)})`, kind: "number" };
    }
    const code = `${operations[operator]}(${l.code},${r.code})`;
    return { code, kind: comparisons.includes(operator) ? "yesno" : "number" };
  }
}

function number({ code, kind }: RowCode): string {
  if (kind === "number") return code;
  return kind === "yesno" ? `(${code}?1:0)` : `num(${code})`;
}

function hasColumn(tree: Tree): boolean {
  if (tree.kind === "column") return true;
  if (tree.kind === "binary") return hasColumn(tree.left) || hasColumn(tree.right);
  if (tree.kind === "negate" || tree.kind === "convert") return hasColumn(tree.of);
  return false;
}
