import type { Value } from "../formula/value.js";
import { inUnit } from "../template/compile.js";
import type { InputDeclaration, InputValue, TableBlock } from "../template/declare.js";
import { type Cell, columnOf, type Model } from "../template/model.js";
import { bookRows } from "./book-rows.js";
import { serialOf } from "./date.js";
import { JobError } from "./job-error.js";
import type { PriceBook } from "./price-book.js";
import type { JobRecord } from "./record.js";
import { givenFor } from "./validate.js";

/**
 * The list of values of a job before calculation: inputs (as given, or their default),
 * published figures and the price book's rows, by the index of the cell; formula cells
 * are null. Throws JobError for a missing input, an unknown choice or a book that lacks a row.
 */
export function valuesOf(model: Model, job: JobRecord, book: PriceBook): Value[] {
  const values: Value[] = model.cells.map((cell) => (cell.fixed === undefined ? null : cell.fixed));
  const missing: string[] = [];
  for (const cell of model.cells) {
    if (cell.declaration.kind !== "input") continue;
    const value = inputValue(model, job, cell, cell.declaration);
    values[cell.index] = value;
    if (value === null && mustBeGiven(model, job, cell, cell.declaration)) {
      missing.push(`inputs.${cell.id} (${cell.declaration.label}) is missing. Give it a value.`);
    }
  }
  const faults = [...missing, ...unknownChoices(model, values)];
  if (faults.length > 0) {
    throw new JobError("job-incomplete", `The job record ${job.job} cannot be used:`, faults);
  }
  fillBook(model, values, book);
  return values;
}

function inputValue(
  model: Model,
  job: JobRecord,
  cell: Cell,
  declaration: InputDeclaration,
): Value {
  const given = givenFor(job, cell.name, cell.row) as InputValue | undefined;
  if (given !== undefined) {
    return declaration.quantity.kind === "date" ? (serialOf(String(given)) ?? null) : given;
  }
  const table = tableOf(model, cell);
  const usual =
    rowDefault(table, cell) ?? (inUse(table, job, cell) ? declaration.default : undefined);
  if (usual === undefined) return null;
  if (declaration.quantity.kind === "date") return serialOf(String(usual)) ?? null;
  return inUnit(usual, declaration.quantity, model.system);
}

function rowDefault(table: TableBlock | undefined, cell: Cell): InputValue | undefined {
  if (table === undefined || cell.row === undefined) return undefined;
  return table.data?.[cell.row - 1]?.[cell.name.split(".")[1] ?? ""];
}

/** Does the job (or the template) fill this row? Single cells always count. */
function inUse(table: TableBlock | undefined, job: JobRecord, cell: Cell): boolean {
  if (table === undefined || cell.row === undefined) return true;
  const given = job.inputs[table.name];
  const rows = Array.isArray(given) ? given.length : 0;
  return table.filled === undefined || cell.row <= Math.max(rows, table.data?.length ?? 0);
}

const tableOf = (model: Model, cell: Cell): TableBlock | undefined =>
  cell.table === undefined ? undefined : model.tables.get(cell.table)?.block;

function mustBeGiven(
  model: Model,
  job: JobRecord,
  cell: Cell,
  declaration: InputDeclaration,
): boolean {
  if (declaration.optional) return false;
  return inUse(tableOf(model, cell), job, cell);
}

/** Inputs chosen from a column must be in it; upper and lower case count as the same, as in a look-up. */
function unknownChoices(model: Model, values: readonly Value[]): string[] {
  return model.cells.flatMap((cell) => {
    const { declaration } = cell;
    if (declaration.kind !== "input" || typeof declaration.choices !== "string") return [];
    const value = values[cell.index];
    if (value === null || value === undefined) return [];
    const [tableName = "", key = ""] = declaration.choices.split(".");
    const { cells, declaration: source } = columnOf(model, tableName, key);
    if (source.kind === "book" || source.kind === "calc") return [];
    const known = cells.map(({ index }) => values[index]).filter((one) => one !== null);
    const same = (one: Value | undefined) =>
      String(one).toLowerCase() === String(value).toLowerCase();
    if (known.some(same)) return [];
    return [
      `inputs.${cell.id} is "${value}", but must be one of: ${known.join(", ")}. Choose one.`,
    ];
  });
}

function fillBook(model: Model, values: Value[], book: PriceBook): void {
  for (const { block, columns } of model.tables.values()) {
    if (block.from === undefined) continue;
    const rows = bookRows(model, block, values, book);
    for (const [key, { cells, declaration }] of columns) {
      if (declaration.kind !== "book") continue;
      rows.forEach((row, i) => {
        const value = row[key];
        const cell = cells[i] as Cell;
        if (value === undefined) return;
        values[cell.index] =
          declaration.quantity.kind === "date"
            ? (serialOf(String(value)) ?? null)
            : inUnit(value, declaration.quantity, model.system);
      });
    }
  }
}
