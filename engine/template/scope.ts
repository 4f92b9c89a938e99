import type { Scope } from "../formula/check.js";
import type { Typed } from "../formula/functions/index.js";
import type { NamedFormula } from "../formula/named-formula.js";
import { typeOfQuantity } from "../formula/type.js";
import type { UnitSystem } from "../units/quantity.js";
import { areaTable, wordsOf } from "./area.js";
import type { TableBlock } from "./declare.js";
import type { Spot } from "./spots.js";

/** All that the formulas of a template can name. */
export class Names {
  private readonly scalars = new Map<string, Spot>();
  private readonly tables = new Map<string, TableBlock>();
  private readonly sheets = new Map<string, string>();

  constructor(
    spots: readonly Spot[],
    private readonly system: UnitSystem,
    private readonly formulas: ReadonlyMap<string, NamedFormula>,
  ) {
    for (const spot of spots) {
      if (spot.table === undefined) this.scalars.set(spot.name, spot);
      else this.tables.set(spot.table.name, spot.table);
    }
    for (const sheet of new Set(spots.map((spot) => spot.sheet))) {
      this.sheets.set(wordsOf(sheet), sheet);
    }
  }

  /**
   * The scope of a formula: for a row, its own columns by name, those of the table
   * beside, the row before as `above.name`; then single cells, and whole columns
   * as `table.column`; all cells of a sheet as `cells.sheet`.
   */
  scope(table: TableBlock | undefined, hasRowAbove: boolean): Scope {
    return {
      system: this.system,
      formulas: this.formulas,
      resolve: (name) => this.resolve(name, table, hasRowAbove),
      names: () => this.all(table),
    };
  }

  private resolve(
    name: string,
    table: TableBlock | undefined,
    hasRowAbove: boolean,
  ): Typed | undefined {
    const [first = "", second, further] = name.split(".");
    if (further !== undefined) return undefined;
    if (second !== undefined) {
      if (first === "above") return hasRowAbove ? this.own(second, table, 1) : undefined;
      return first === areaTable ? this.area(second) : this.column(first, second);
    }
    const own = this.own(name, table, 0);
    if (own !== undefined) return own;
    const scalar = this.scalars.get(name);
    if (scalar === undefined) return undefined;
    return {
      tree: { kind: "scalar", name },
      type: typeOfQuantity(scalar.declaration.quantity, this.system),
    };
  }

  private own(key: string, table: TableBlock | undefined, back: 0 | 1): Typed | undefined {
    const beside = table?.beside === undefined ? undefined : this.tables.get(table.beside);
    for (const home of [table, beside]) {
      const declaration = home && Object.hasOwn(home.columns, key) ? home.columns[key] : undefined;
      if (home === undefined || declaration === undefined) continue;
      return {
        tree: { kind: "own", table: home.name, column: key, back },
        type: typeOfQuantity(declaration.quantity, this.system),
      };
    }
    return undefined;
  }

  private column(tableName: string, key: string): Typed | undefined {
    const table = this.tables.get(tableName);
    const declaration = table && Object.hasOwn(table.columns, key) ? table.columns[key] : undefined;
    if (declaration === undefined) return undefined;
    return {
      tree: { kind: "column", table: tableName, column: key },
      type: typeOfQuantity(declaration.quantity, this.system, true),
    };
  }

  private area(words: string): Typed | undefined {
    const sheet = this.sheets.get(words);
    return sheet === undefined
      ? undefined
      : { tree: { kind: "area", sheet }, type: { kind: "zero", range: true } };
  }

  private all(table: TableBlock | undefined): string[] {
    const columns = [...this.tables.values()].flatMap(({ name, columns: found }) =>
      Object.keys(found).map((key) => `${name}.${key}`),
    );
    return [...Object.keys(table?.columns ?? {}), ...this.scalars.keys(), ...columns];
  }
}
