import type { Value } from "../formula/value.js";
import type { InputDeclaration } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import { secondCellOf } from "../template/second-cell.js";
import { inputPlanOf } from "./input-plan.js";

/** Must a person give it, since neither the template nor an office book does? */
const mustBeGiven = ({ quantity, optional, default: usual }: InputDeclaration): boolean =>
  quantity.kind !== "yesno" && optional !== true && usual === undefined;

/**
 * The inputs that a new job must give before it has a price, in the order in which the sheets ask for them:
 * those of the walk and of the decisions without a default, and of each table that opens with a row its first.
 */
export function firstFields(model: Model): readonly Cell[] {
  const known = firstOf.get(model) ?? foundFirst(model);
  firstOf.set(model, known);
  return known;
}

const firstOf = new WeakMap<Model, readonly Cell[]>();

function foundFirst(model: Model): readonly Cell[] {
  return inOrder(model, (cell) => {
    const declaration = cell.declaration as InputDeclaration;
    if (declaration.asked === "office" || !mustBeGiven(declaration)) return false;
    if (cell.table === undefined) return true;
    const { block } = model.tables.get(cell.table) ?? {};
    return block?.data === undefined && (cell.row ?? 1) <= (block?.opening ?? 0);
  });
}

/** Of a length in feet and inches, both are blank: it may be given in inches alone. */
const isBlankIn =
  (model: Model, values: readonly Value[]) =>
  (cell: Cell): boolean =>
    isNull(values, cell) && isNull(values, secondCellOf(model, cell) ?? cell);

const isNull = (values: readonly Value[], { index }: Cell): boolean =>
  (values[index] ?? null) === null;

/** The first fields that are still blank, in the same order. */
export const openFields = (model: Model, values: readonly Value[]): Cell[] =>
  firstFields(model).filter(isBlankIn(model, values));

/**
 * The inputs that a job lacks, in the order in which the sheets ask for them: blank ones that are not
 * optional, of a table those in rows that somebody has begun, and the first fields.
 */
export function missingInputs(model: Model, values: readonly Value[]): Cell[] {
  const isBlank = isBlankIn(model, values);
  const begun = new Set<string>();
  for (const { cell, ready, usual } of inputPlanOf(model).inputs) {
    if (isBlank(cell)) continue;
    // what stands ready in every row begins none, until it is changed
    if (!ready || values[cell.index] !== usual) begun.add(rowOf(cell));
  }
  const first = new Set(firstFields(model));
  return inOrder(model, (cell) => {
    const { quantity, optional } = cell.declaration as InputDeclaration;
    if (!isBlank(cell) || optional || quantity.kind === "yesno") return false;
    return cell.table === undefined || begun.has(rowOf(cell)) || first.has(cell);
  });
}

const rowOf = ({ name, table, row }: Cell): string =>
  table === undefined ? name : `${table}[${row}]`;

/** The inputs for which a condition holds, by sheet, line and column. */
function inOrder(model: Model, wanted: (cell: Cell) => boolean): Cell[] {
  const sheets = new Map(model.sheets.map(({ name }, i) => [name, i]));
  const place = ({ sheet }: Cell) => sheets.get(sheet) ?? 0;
  return inputPlanOf(model)
    .inputs.map(({ cell }) => cell)
    .filter(wanted)
    .sort((a, b) => place(a) - place(b) || a.line - b.line || a.column - b.column);
}
