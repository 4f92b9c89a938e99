import { inputPlanOf } from "../job/input-plan.js";
import { checkList } from "../template/checks-sheet.js";
import type { Cell, Column, Model, Table } from "../template/model.js";
import { rolesOf } from "../template/role-plan.js";
import type { DefinedName } from "../workbook/read/content.js";
import { type CellPlace, nameAmong, placeAt, placesAt } from "../workbook/read/lookup.js";

const checkStates = `${checkList}.rank`;

/** Where the cells of a model stand in the workbooks of these names: what was found for one of them holds for the next. */
export class Places {
  /** By index of the cell; null where its name is missing. */
  readonly #of: (CellPlace | "elsewhere" | null | undefined)[] = [];
  #wanted: ReadonlySet<string> | undefined;

  constructor(
    private readonly model: Model,
    private readonly names: readonly DefinedName[],
  ) {}

  /** The sheets, as the workbooks call them, that hold what is looked at. */
  get wanted(): ReadonlySet<string> {
    this.#wanted ??= this.sheetsOf(lookedAt(this.model));
    return this.#wanted;
  }

  sheetsOf(names: readonly string[]): ReadonlySet<string> {
    return new Set(names.flatMap((name) => nameAmong(this.names, name)?.target?.sheet ?? []));
  }

  /**
   * Undefined for a cell without a name there; "elsewhere" where the range of its table has not as many rows as the
   * template has: rows were inserted or deleted. Throws WorkbookRefused for a name that points to something else.
   */
  of(cell: Cell): CellPlace | "elsewhere" | undefined {
    const known = this.#of[cell.index];
    if (known !== undefined) return known ?? undefined;
    if (nameAmong(this.names, cell.name)?.target === undefined) this.#of[cell.index] = null;
    else if (cell.table === undefined) this.#of[cell.index] = placeAt(this.names, cell.name);
    else this.#findColumn(cell.name, cell.table);
    return this.#of[cell.index] ?? undefined;
  }

  #findColumn(name: string, table: string): void {
    const { columns } = this.model.tables.get(table) as Table;
    const { cells } = columns.get(name.slice(table.length + 1)) as Column;
    const places = placesAt(this.names, name);
    const isWhole = places.length === cells.length;
    for (const [i, { index }] of cells.entries()) {
      this.#of[index] = isWhole ? (places[i] as CellPlace) : "elsewhere";
    }
  }
}

function lookedAt(model: Model): string[] {
  const { price, cost, sections } = rolesOf(model);
  const cells = [price, cost, ...sections.map(({ cell }) => cell)];
  const inputs = inputPlanOf(model).inputs.map(({ cell }) => cell);
  return [...new Set([...inputs, ...cells].map(({ name }) => name)), checkStates];
}

const known = new WeakMap<readonly DefinedName[], Map<Model, Places>>();

/** The places for a list of names, which workbooks that were read with the same `kept` share. */
export function placesOf(model: Model, names: readonly DefinedName[]): Places {
  const ofNames = known.get(names) ?? new Map<Model, Places>();
  known.set(names, ofNames);
  const places = ofNames.get(model) ?? new Places(model, names);
  ofNames.set(model, places);
  return places;
}
