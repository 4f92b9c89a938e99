import type { Tree } from "../formula/tree.js";
import { betweenNumbers, opened, operations } from "./operations.js";

/** Writes what stands in a loop over rows. */
export interface RowWriter {
  /** A tree that has one value. */
  readonly single: (tree: Tree) => Pick<RowCode, "code" | "kind">;
  /** Where a column stands in the list of values, and whether its cells are numbers for sure. */
  readonly place: (tree: Extract<Tree, { kind: "column" }>) => {
    readonly from: number;
    readonly rows: number;
    readonly kind: RowCode["kind"];
  };
}

/** An expression of one row, and whether its value is known to be a number or a truth value. */
interface RowCode {
  readonly code: string;
  readonly kind: "number" | "yesno" | "any";
  /** It is the same in every row. */
  readonly once: boolean;
}

/**
 * The sum of products over the rows of columns as one loop, without a list for each step. Of several errors
 * the one that shows is that of the lists, one after another: `lists`, which is calculated where the loop
 * meets any. What stands in it several times is calculated once. Gives `lists` itself where there is no loop to write.
 */
export function productsByRow(args: readonly Tree[], writer: RowWriter, lists: string): string {
  const loop = new Loop(writer);
  const factors = args.map((arg) => loop.factor(arg));
  if (loop.rows === undefined || factors.includes(undefined)) return lists;
  return `(()=>{try{${loop.before.text}let t=0;for(let i=0;i<${loop.rows};i++){${loop.within.text}t+=${factors.join("*")};}return finite(t);}catch{return ${lists};}})()`;
}

const arithmetic: readonly string[] = ["+", "-", "*"];
const comparisons: readonly string[] = ["=", "<>", "<", "<=", ">", ">="];

/** Values by name, each expression once. */
class Named {
  readonly #names = new Map<string, string>();

  constructor(private readonly letter: string) {}

  /** The name of what an expression comes to. */
  of(code: string): string {
    const known = this.#names.get(code) ?? `${this.letter}${this.#names.size}`;
    this.#names.set(code, known);
    return known;
  }

  get text(): string {
    return [...this.#names].map(([code, name]) => `const ${name}=${code};`).join("");
  }
}

class Loop {
  /** What is the same for every row is calculated once, before. */
  readonly before = new Named("s");
  /** What each row comes to on the way. */
  readonly within = new Named("r");
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
    return row?.kind === "any"
      ? this.#named("number", `counted(${row.code})`, row).code
      : undefined;
  }

  /** An expression of others by a name of its own. */
  #named(kind: RowCode["kind"], code: string, ...of: readonly RowCode[]): RowCode {
    const once = of.every((one) => one.once);
    return { code: (once ? this.before : this.within).of(code), kind, once };
  }

  #number(of: RowCode): string {
    if (of.kind === "number") return of.code;
    return of.kind === "yesno"
      ? `(${of.code}?1:0)`
      : this.#named("number", `num(${of.code})`, of).code;
  }

  #row(tree: Tree): RowCode | undefined {
    switch (tree.kind) {
      case "column":
        return this.#column(tree);
      case "convert":
        return this.#row(opened(tree));
      case "negate": {
        const of = this.#row(tree.of);
        return of && this.#named("number", `-${this.#number(of)}`, of);
      }
      case "binary":
        return this.#binary(tree);
      case "number":
        return { code: `(${tree.value})`, kind: "number", once: true };
      default:
        return this.#single(tree);
    }
  }

  #single(tree: Tree): RowCode {
    const { code, kind } = this.writer.single(tree);
    const held = kind === "number" ? `num(${code})` : code;
    return { code: this.before.of(held), kind, once: true };
  }

  #column(tree: Extract<Tree, { kind: "column" }>): RowCode {
    const { from, rows, kind } = this.writer.place(tree);
    this.#uneven ||= this.#rows !== undefined && this.#rows !== rows;
    this.#rows = rows;
    const cell = `v[${from}+i]`;
    const code = this.within.of(kind === "number" ? `num(${cell})` : cell);
    return { code, kind: kind === "number" ? kind : "any", once: false };
  }

  #binary({ operator, left, right }: Extract<Tree, { kind: "binary" }>): RowCode | undefined {
    const [l, r] = [this.#row(left), this.#row(right)];
    if (l === undefined || r === undefined || operator === "&") return undefined;
    if (arithmetic.includes(operator)) {
      const code = `finite(${this.#number(l)}${operator}${this.#number(r)})`;
      return this.#named("number", code, l, r);
    }
    const kind = comparisons.includes(operator) ? "yesno" : "number";
    const code =
      l.kind === "number" && r.kind === "number"
        ? betweenNumbers(operator, l.code, r.code)
        : `${operations[operator]}(${l.code},${r.code})`;
    return this.#named(kind, code, l, r);
  }
}

function hasColumn(tree: Tree): boolean {
  if (tree.kind === "column") return true;
  if (tree.kind === "binary") return hasColumn(tree.left) || hasColumn(tree.right);
  if (tree.kind === "negate" || tree.kind === "convert") return hasColumn(tree.of);
  return false;
}
