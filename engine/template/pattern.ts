import { type PrintStyle, print } from "../formula/print.js";
import type { Reference, Tree } from "../formula/tree.js";
import type { Cell, Model } from "./model.js";

/** A reference to a cell of the same row, or of the row above. */
export type OwnReference = Extract<Reference, { kind: "own" }>;
type Lasting = Exclude<Reference, OwnReference>;

/** How a kind of program writes formulas; what stands in the row itself differs from cell to cell. */
export interface RowStyle extends Omit<PrintStyle, "reference"> {
  readonly lasting: (model: Model, sheet: string, reference: Lasting) => string;
  readonly own: (model: Model, cell: Cell, reference: OwnReference) => string;
  /** The tree as these programs can read it; without it, as it is. */
  readonly readable?: (model: Model, tree: Tree) => Tree;
}

/** A formula as all rows of a column have it: texts, and between them what stands in the row. */
interface Pattern {
  readonly texts: readonly string[];
  readonly own: readonly OwnReference[];
}

/** Stands for what differs: no text of a formula can hold it. */
const gap = "\0";

/** Prints the formulas of cells: what the rows of a column have in common is printed once. */
export class RowPrinter {
  readonly #patterns = new WeakMap<Model, WeakMap<Tree, Map<string, Pattern>>>();

  constructor(private readonly style: RowStyle) {}

  /** The native formula of a cell, without the leading `=`; empty where it has none. */
  formula(model: Model, cell: Cell): string {
    if (cell.native === undefined) return "";
    const { texts, own } = this.#pattern(model, cell.sheet, cell.native);
    let formula = texts[0] as string;
    for (let i = 0; i < own.length; i++) {
      formula += this.style.own(model, cell, own[i] as OwnReference) + texts[i + 1];
    }
    return formula;
  }

  /** Of a sheet, since what stands on the same one is written without its name. */
  #pattern(model: Model, sheet: string, tree: Tree): Pattern {
    const ofModel = this.#patterns.get(model) ?? new WeakMap<Tree, Map<string, Pattern>>();
    this.#patterns.set(model, ofModel);
    const ofTree = ofModel.get(tree) ?? new Map<string, Pattern>();
    ofModel.set(tree, ofTree);
    const pattern = ofTree.get(sheet) ?? this.#printed(model, sheet, tree);
    ofTree.set(sheet, pattern);
    return pattern;
  }

  #printed(model: Model, sheet: string, tree: Tree): Pattern {
    const own: OwnReference[] = [];
    const reference = (one: Reference) => {
      if (one.kind !== "own") return this.style.lasting(model, sheet, one);
      own.push(one);
      return gap;
    };
    const readable = this.style.readable?.(model, tree) ?? tree;
    return { texts: print(readable, { ...this.style, reference }).split(gap), own };
  }
}
