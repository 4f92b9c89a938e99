import type { Value } from "../formula/value.js";
import { inUnit } from "../template/compile.js";
import type { InputDeclaration, InputValue, TableBlock } from "../template/declare.js";
import { type Cell, columnOf, type Model, type Table } from "../template/model.js";
import { serialOf } from "./date.js";

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
  /** From this many rows given on, the row counts as in use; 0: always. */
  readonly inUseFrom: number;
  /** The template's value for this row, whether in use or not. */
  readonly ofRow: Value;
  /** The template's default, for a row in use. */
  readonly usual: Value;
}

/** An input whose choices stand in a column of the same job. */
export interface PlannedChoice {
  readonly cell: Cell;
  readonly among: readonly number[];
}

/** How the inputs of a model are filled in from a job record: worked out once for all jobs. */
export interface InputPlan {
  /** Published figures by index; null elsewhere. */
  readonly base: readonly Value[];
  readonly inputs: readonly PlannedInput[];
  readonly choices: readonly PlannedChoice[];
}

const plans = new WeakMap<Model, InputPlan>();

/** The plan of a model, made at the first call. Values are in the units of the model. */
export function inputPlanOf(model: Model): InputPlan {
  const known = plans.get(model);
  if (known !== undefined) return known;
  const inputs = model.cells.filter(({ declaration }) => declaration.kind === "input");
  const made: InputPlan = {
    base: model.cells.map(({ fixed }) => fixed ?? null),
    inputs: inputs.map((cell) => planned(model, cell, cell.declaration as InputDeclaration)),
    choices: inputs.flatMap((cell) => choiceOf(model, cell, cell.declaration as InputDeclaration)),
  };
  plans.set(model, made);
  return made;
}

function planned(model: Model, cell: Cell, declaration: InputDeclaration): PlannedInput {
  const isDate = declaration.quantity.kind === "date";
  const held = (value: InputValue | undefined): Value => {
    if (value === undefined) return null;
    if (isDate) return serialOf(String(value)) ?? null;
    return inUnit(value, declaration.quantity, model.system);
  };
  const plan = {
    cell,
    date: isDate,
    optional: declaration.optional ?? false,
    usual: held(declaration.default),
  };
  if (cell.table === undefined || cell.row === undefined) {
    return { ...plan, ownRows: false, inUseFrom: 0, ofRow: null };
  }
  const { block } = model.tables.get(cell.table) as Table;
  const key = cell.name.slice(cell.table.length + 1);
  const always = block.filled === undefined || cell.row <= (block.data?.length ?? 0);
  return {
    ...plan,
    table: cell.table,
    key,
    ownRows: hasOwnRows(block),
    inUseFrom: always ? 0 : cell.row,
    ofRow: held(block.data?.[cell.row - 1]?.[key]),
  };
}

/**
 * Are the rows that a table opens with only a start, which a job's rows replace? They are where
 * people tell rows apart by an input; a published or calculated first column fixes them, and so
 * does a table whose rows are all in use.
 */
export function hasOwnRows({ data, filled, columns }: TableBlock): boolean {
  const first = Object.values(columns)[0];
  return data !== undefined && filled !== undefined && first?.kind === "input";
}

/** Choices from an office-book or calculated column are known only later: the bid's own checks look at them. */
function choiceOf(model: Model, cell: Cell, { choices }: InputDeclaration): PlannedChoice[] {
  if (typeof choices !== "string") return [];
  const [tableName = "", key = ""] = choices.split(".");
  const { cells, declaration } = columnOf(model, tableName, key);
  if (declaration.kind === "book" || declaration.kind === "calc") return [];
  return [{ cell, among: cells.map(({ index }) => index) }];
}
