import type { Value } from "../formula/value.js";
import type { BookRow, OfficeValues } from "../template/book-layout.js";
import { inUnit } from "../template/compile.js";
import { converted } from "../template/converted.js";
import type { InputDeclaration, InputValue, TableBlock } from "../template/declare.js";
import { type Cell, columnOf, type Model, type Table } from "../template/model.js";
import { officeRowsOf, officeRules } from "../template/office-values.js";
import { hasOwnRows, standsReady } from "../template/own-rows.js";
import { serialOf } from "./date.js";
import { recorded } from "./trail/inputs.js";

/** What a job record may give for an input cell, and what holds where it gives nothing. */
export interface PlannedInput {
  readonly cell: Cell;
  readonly date: boolean;
  readonly optional: boolean;
  /** The table and the column, for a cell in a row. */
  readonly table?: string;
  readonly key?: string;
  /** The rows are the person's own: where a job gives the table, the template's rows do not hold. */
  readonly ownRows: boolean;
  /** The template or the office opens the row, so that it is in use before a job gives it. */
  readonly isOpen: boolean;
  /** From this many rows given on, the row counts as in use; 0: always. */
  readonly inUseFrom: number;
  /** It stands at its usual value also in a row that is not in use. */
  readonly ready: boolean;
  /** The office's or the template's value for this row, whether in use or not. */
  readonly ofRow: Value;
  /** The office book's rule or the template's default, for a row in use. */
  readonly usual: Value;
}

/** The inputs of a table. What most jobs ask of them stands in lists by itself: it is looked up a thousand times a job. */
export interface PlannedTable {
  /** Row by row, in each the columns in one order. */
  readonly rows: readonly (readonly PlannedInput[])[];
  /** The place of each column in a row, by its key. */
  readonly columns: ReadonlyMap<string, number>;
  readonly dates: readonly boolean[];
  /** The index of each cell, row by row. */
  readonly places: Uint32Array;
}

/** Inputs that a job has to give where their row is in use, and the indexes of their cells. */
export interface Required {
  readonly inputs: readonly PlannedInput[];
  readonly places: Uint32Array;
}

/** How the inputs of a model are filled in from a job record: worked out once for all jobs. */
export interface InputPlan {
  /** Published figures by index; null elsewhere. */
  readonly base: readonly Value[];
  readonly inputs: readonly PlannedInput[];
  /** Those outside of tables, by name. */
  readonly singles: ReadonlyMap<string, PlannedInput>;
  /** Those of each table. */
  readonly tables: ReadonlyMap<string, PlannedTable>;
  readonly required: Required;
}

const noOffice: OfficeValues = { tables: {} };
const plans = new WeakMap<Model, WeakMap<OfficeValues, InputPlan>>();

/**
 * The plan of a model under an office book, made at the first call: where the book has a rule, it takes
 * the place of the template's default. Values are in the units of the model.
 */
export function inputPlanOf(model: Model, office: OfficeValues = noOffice): InputPlan {
  const ofModel = plans.get(model) ?? new WeakMap<OfficeValues, InputPlan>();
  plans.set(model, ofModel);
  const known = ofModel.get(office);
  if (known !== undefined) return known;
  const without = office === noOffice ? undefined : inputPlanOf(model);
  const planner = new Planner(model, office);
  const planned = without
    ? without.inputs.map((one) => (planner.mayDiffer(one.cell) ? planner.planned(one.cell) : one))
    : model.cells.filter(isInput).map((cell) => planner.planned(cell));
  const made: InputPlan = {
    base: without?.base ?? model.cells.map(({ fixed }) => fixed ?? null),
    inputs: planned,
    singles: new Map(
      planned.flatMap((one) => (one.table === undefined ? [[one.cell.name, one] as const] : [])),
    ),
    tables: tablesOf(planned),
    required: requiredOf(planned),
  };
  ofModel.set(office, made);
  return made;
}

const isInput = ({ declaration }: Cell): boolean => declaration.kind === "input";

function requiredOf(planned: readonly PlannedInput[]): Required {
  const inputs = planned.filter(({ optional }) => !optional);
  return { inputs, places: Uint32Array.from(inputs, ({ cell }) => cell.index) };
}

function tablesOf(planned: readonly PlannedInput[]): Map<string, PlannedTable> {
  const tables = new Map<string, PlannedInput[][]>();
  for (const one of planned) {
    if (one.table === undefined) continue;
    const rows = tables.get(one.table) ?? [];
    tables.set(one.table, rows);
    const at = (one.cell.row ?? 1) - 1;
    while (rows.length <= at) rows.push([]);
    rows[at]?.push(one);
  }
  return new Map([...tables].map(([name, rows]) => [name, tableOf(rows)]));
}

function tableOf(rows: readonly (readonly PlannedInput[])[]): PlannedTable {
  const [first = []] = rows;
  return {
    rows,
    columns: new Map(first.map(({ key = "" }, i) => [key, i])),
    dates: first.map(({ date }) => date),
    places: Uint32Array.from(rows.flat(), ({ cell }) => cell.index),
  };
}

class Planner {
  private readonly rules: ReadonlyMap<string, InputValue>;
  private readonly rows = new Map<string, readonly (BookRow | undefined)[] | undefined>();

  constructor(
    private readonly model: Model,
    private readonly office: OfficeValues,
  ) {
    this.rules = officeRules(office);
  }

  /** Can the office's book say something of an input? What it says nothing of is as without a book. */
  mayDiffer({ declaration, table }: Cell): boolean {
    const { asked } = declaration as InputDeclaration;
    return asked === "office" || (table !== undefined && this.rowsFor(table) !== undefined);
  }

  planned(cell: Cell): PlannedInput {
    const declaration = cell.declaration as InputDeclaration;
    const plan = {
      cell,
      date: declaration.quantity.kind === "date",
      optional: declaration.optional ?? false,
      usual:
        this.fromBook(declaration, this.rules.get(cell.name)) ??
        this.held(declaration, declaration.default),
    };
    if (cell.table === undefined || cell.row === undefined) {
      return { ...plan, ownRows: false, isOpen: true, inUseFrom: 0, ready: false, ofRow: null };
    }
    const { block } = this.model.tables.get(cell.table) as Table;
    const key = cell.name.slice(cell.table.length + 1);
    const office = this.rowsFor(cell.table);
    const opening = office?.length ?? block.data?.length ?? 0;
    const always = block.filled === undefined || cell.row <= opening;
    const ofOffice = this.fromBook(declaration, office?.[cell.row - 1]?.[key]);
    const byTemplate = this.templateRow(block, declaration, office, cell.row)?.[key];
    return {
      ...plan,
      table: cell.table,
      key,
      ownRows: hasOwnRows(block),
      isOpen: always,
      inUseFrom: always ? 0 : cell.row,
      ready: standsReady(block, declaration),
      ofRow: ofOffice ?? this.held(declaration, byTemplate),
    };
  }

  /**
   * The template's row for a row of a table. Rows that the office keeps as its own replace the template's in what
   * the office is asked; what a job is asked beside it still opens as the template has it for the row of that name.
   */
  private templateRow(
    block: TableBlock,
    { asked }: InputDeclaration,
    office: readonly (BookRow | undefined)[] | undefined,
    row: number,
  ): BookRow | undefined {
    const { data = [], name } = block;
    if (office === undefined || !hasOwnRows(block)) return data[row - 1];
    if (asked === "office") return undefined;
    const [first] = Object.entries(block.columns) as [[string, InputDeclaration]];
    const [key, declaration] = first;
    if (declaration.asked !== "office") return data[row - 1];
    const [cell] = columnOf(this.model, name, key).cells as [Cell];
    const said = (value: Value) => String(recorded(cell, value) ?? "").toLowerCase();
    const own = said(this.fromBook(declaration, office[row - 1]?.[key]));
    return own === ""
      ? undefined
      : data.find((one) => said(this.held(declaration, one[key])) === own);
  }

  private rowsFor(table: string): readonly (BookRow | undefined)[] | undefined {
    if (!this.rows.has(table)) {
      this.rows.set(
        table,
        officeRowsOf((this.model.tables.get(table) as Table).block, this.office),
      );
    }
    return this.rows.get(table);
  }

  /** A value of the template, in the unit of the model. */
  private held({ quantity }: InputDeclaration, value: InputValue | undefined): Value {
    if (value === undefined) return null;
    if (quantity.kind === "date") return serialOf(String(value)) ?? null;
    return inUnit(value, quantity, this.model.system);
  }

  private fromBook({ quantity, asked }: InputDeclaration, value: InputValue | undefined): Value {
    if (asked !== "office" || value === undefined) return null;
    if (quantity.kind === "date") return serialOf(String(value)) ?? null;
    return converted(value, quantity, this.office.units ?? "us", this.model.system);
  }
}
