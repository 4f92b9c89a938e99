import { functionList } from "../evaluate/closures.js";
import { readList } from "../evaluate/links.js";
import { validatorText } from "../job/validator.js";
import type { FunctionList, ReadList } from "../template/made-code.js";
import type { Cell, Condition, Model } from "../template/model.js";
import { shownKey } from "../template/tables.js";
import { GraphPacker, type PackedGraph } from "./graph.js";

/** A model as plain JSON: what the template itself tells is left out, objects stand as places in `graph`. */
export interface PackedModel {
  readonly graph: PackedGraph;
  readonly sheets: number;
  readonly placed: number;
  readonly stretches: readonly Stretch[];
  /** The trees of each distinct formula; what a cell has not is the place of null. */
  readonly formulas: readonly PackedFormula[];
  readonly conditions: readonly (readonly [key: string, spoken: number, native: number])[];
  /** By index of the cell. */
  readonly order: readonly number[];
  readonly checks: readonly string[];
}

/** Cells that follow one another, of one name: a column of a table, or a single cell. */
export interface Stretch {
  readonly name: string;
  readonly table?: string;
  readonly rows: number;
  readonly declaration: number;
  readonly sheet: string;
  readonly column: number;
  /** Of the first cell. */
  readonly line: number;
  readonly implied: boolean;
  readonly apart: boolean;
  /** Of each cell, or one for all; `noFormula` where a cell of them holds words alone. */
  readonly formulas?: readonly number[];
  readonly fixed?: readonly (Cell["fixed"] | null)[];
}

/** In place of a formula's number: there is none. */
const noFormula = -1;

export type PackedFormula = readonly [
  spoken: number,
  native: number,
  inUse?: number,
  says?: number,
];

/** All that is kept of a model. */
export interface Packed {
  readonly model: PackedModel;
  readonly functions: FunctionList;
  readonly reads: ReadList;
  readonly validator: string;
}

/** Packs a compiled model. Throws where something of it would not come back as it is. */
export function packed(model: Model): Packed {
  return {
    model: new Packer().model(model),
    functions: functionList(model),
    reads: readList(model),
    validator: validatorText(model),
  };
}

class Packer {
  private readonly graph = new GraphPacker();
  private readonly formulas: PackedFormula[] = [];
  private readonly known = new Map<string, number>();

  model({ sheets, placed, cells, tables, order, checks }: Model): PackedModel {
    return {
      sheets: this.graph.place(sheets),
      placed: this.graph.place(placed),
      stretches: stretchesOf(cells).map((stretch) => this.stretch(stretch)),
      conditions: [...tables.values()].flatMap(({ name, filled, shown }) => [
        ...this.condition(name, filled),
        ...this.condition(shownKey(name), shown),
      ]),
      order: order.map(({ index }) => index),
      checks,
      formulas: this.formulas,
      graph: { shapes: this.graph.shapes, entries: this.graph.entries },
    };
  }

  private stretch(cells: readonly Cell[]): Stretch {
    const first = cells[0] as Cell;
    const formulas = cells.map((cell) => this.formula(cell));
    return {
      name: first.name,
      ...(first.table === undefined ? {} : { table: first.table }),
      rows: cells.length,
      declaration: this.graph.place(first.declaration),
      sheet: first.sheet,
      column: first.column,
      line: first.line,
      implied: first.implied,
      apart: first.apart,
      ...(formulas.every((one) => one === noFormula)
        ? {}
        : { formulas: new Set(formulas).size === 1 ? formulas.slice(0, 1) : formulas }),
      ...(cells.some(({ fixed }) => fixed !== undefined)
        ? { fixed: cells.map(({ fixed }) => fixed ?? null) }
        : {}),
    };
  }

  private formula({ spoken, native, inUse, says }: Cell): number {
    if (spoken === undefined || native === undefined) return noFormula;
    const places = [
      this.graph.place(spoken),
      this.graph.place(native),
      this.graph.place(inUse ?? null),
      this.graph.place(says ?? null),
    ] as const;
    const key = places.join(" ");
    const known = this.known.get(key) ?? this.formulas.push(places) - 1;
    this.known.set(key, known);
    return known;
  }

  private condition(key: string, condition: Condition | undefined): PackedModel["conditions"] {
    if (condition === undefined) return [];
    return [[key, this.graph.place(condition.spoken), this.graph.place(condition.native)]];
  }
}

/** Parts the cells where another column begins. */
function stretchesOf(cells: readonly Cell[]): Cell[][] {
  const stretches: Cell[][] = [];
  for (const cell of cells) {
    const last = stretches.at(-1);
    if (last !== undefined && follows(cell, last[0] as Cell, last.length)) last.push(cell);
    else stretches.push([cell]);
  }
  return stretches;
}

/** Is a cell the next one below a stretch? A cell in a row begins none but in the first. */
function follows(cell: Cell, first: Cell, rows: number): boolean {
  if (cell.table === undefined || cell.name !== first.name) return false;
  const alike =
    cell.declaration === first.declaration &&
    cell.sheet === first.sheet &&
    cell.column === first.column &&
    cell.line === first.line + rows &&
    cell.row === rows + 1 &&
    cell.implied === first.implied &&
    cell.apart === first.apart;
  if (!alike) throw new Error(`The cell ${cell.id} does not follow the one above it.`);
  return true;
}
