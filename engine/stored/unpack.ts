import type { Tree } from "../formula/tree.js";
import type { CellDeclaration, SheetDeclaration } from "../template/declare.js";
import { formulasOf } from "../template/formulas-of.js";
import type { Cell, Condition, Model, PlacedBlock } from "../template/model.js";
import { tablesOf } from "../template/tables.js";
import type { Template } from "../template/template.js";
import { type UnitSystem, unitOf } from "../units/quantity.js";
import type { Unit } from "../units/unit.js";
import { Graph } from "./graph.js";
import type { PackedFormula, PackedModel, Stretch } from "./pack.js";

/** The model that was packed. Trees of formulas are made when they are first asked for. */
export function unpacked(packed: PackedModel, template: Template, system: UnitSystem): Model {
  const graph = new Graph(packed.graph);
  const formulas = packed.formulas.map((places) => new Formula(graph, places));
  const cells: Cell[] = [];
  for (const stretch of packed.stretches) {
    const declaration = graph.at(stretch.declaration) as CellDeclaration;
    const unit = unitOf(declaration.quantity, system);
    for (let i = 0; i < stretch.rows; i++) {
      const { formulas: own } = stretch;
      const formula = own === undefined ? undefined : formulas[(own[i] ?? own[0]) as number];
      const cell = new StoredCell(cells.length, stretch, i, declaration, unit, formula);
      // a tree that it has not is undefined
      cells.push(cell as Cell);
    }
  }
  const sheets = graph.at(packed.sheets) as readonly SheetDeclaration[];
  const conditions = new Map(
    packed.conditions.map(([key, ...places]): [string, Condition] => [
      key,
      new Formula(graph, places),
    ]),
  );
  return {
    template,
    system,
    sheets,
    placed: graph.at(packed.placed) as readonly PlacedBlock[],
    cells,
    byId: new Map(cells.map((cell) => [cell.id, cell])),
    tables: tablesOf(cells, sheets, conditions),
    formulas: formulasOf(template),
    order: packed.order.map((index) => cells[index] as Cell),
    checks: packed.checks,
  };
}

/** A formula whose trees are made from the graph on demand. */
class Formula implements Condition {
  readonly #graph: Graph;
  readonly #places: PackedFormula;

  constructor(graph: Graph, places: PackedFormula) {
    this.#graph = graph;
    this.#places = places;
  }

  get spoken(): Tree {
    return this.#graph.at(this.#places[0]) as Tree;
  }

  get native(): Tree {
    return this.#graph.at(this.#places[1]) as Tree;
  }

  get inUse(): Tree | undefined {
    return this.#maybe(this.#places[2]);
  }

  get says(): Tree | undefined {
    return this.#maybe(this.#places[3]);
  }

  #maybe(place: number | undefined): Tree | undefined {
    return place === undefined ? undefined : ((this.#graph.at(place) ?? undefined) as Tree);
  }
}

class StoredCell implements Omit<Cell, "spoken" | "native" | "inUse" | "says"> {
  readonly id: string;
  readonly name: string;
  declare readonly table?: string;
  declare readonly row?: number;
  readonly sheet: string;
  readonly column: number;
  readonly line: number;
  readonly implied: boolean;
  readonly apart: boolean;
  declare readonly fixed?: number | string | boolean;
  readonly #formula: Formula | undefined;

  constructor(
    readonly index: number,
    { name, table, sheet, column, line, implied, apart, fixed }: Stretch,
    place: number,
    readonly declaration: CellDeclaration,
    readonly unit: Unit,
    formula: Formula | undefined,
  ) {
    this.id = table === undefined ? name : `${name}[${place + 1}]`;
    this.name = name;
    if (table !== undefined) {
      this.table = table;
      this.row = place + 1;
    }
    this.sheet = sheet;
    this.column = column;
    this.line = line + place;
    this.implied = implied;
    this.apart = apart;
    const value = fixed?.[place] ?? undefined;
    if (value !== undefined) this.fixed = value;
    this.#formula = formula;
  }

  get spoken(): Tree | undefined {
    return this.#formula?.spoken;
  }

  get native(): Tree | undefined {
    return this.#formula?.native;
  }

  get inUse(): Tree | undefined {
    return this.#formula?.inUse;
  }

  get says(): Tree | undefined {
    return this.#formula?.says;
  }
}
