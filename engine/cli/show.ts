import { Command } from "commander";
import { addressOf } from "../address.js";
import { type OpenedJob, openJob } from "../audit/open.js";
import { agree } from "../audit/subject.js";
import { CellError, type Value } from "../formula/value.js";
import { writtenDate } from "../job/date.js";
import { rootErrors } from "../job/errors-in-cells.js";
import { failedChecks } from "../job/failed-checks.js";
import { faultyInputInWords, faultyInputs, faultyInputsAsJson } from "../job/faulty-inputs.js";
import { inputPlanOf } from "../job/input-plan.js";
import { shownValue } from "../job/shown-value.js";
import type { Cell, Model, Table } from "../template/model.js";
import { askedFor } from "./cell-asked-for.js";
import type { Context } from "./context.js";
import { errorsTold } from "./errors-told.js";
import { bothOption, evaluatorFor } from "./evaluators.js";
import { exampleOf } from "./example.js";
import { aligned, tellStatus } from "./status-told.js";

/** `rillbook show`: the values of a job by name. */
export function showCommand(context: Context): Command {
  const { result, table, figure } = exampleOf(context);
  return new Command("show")
    .description("show the values of a job: all, or those named (a table by its name)")
    .argument("<job>", "job record or workbook")
    .argument(
      "[names...]",
      `names of cells, columns (${result}) or tables (${table}), or places of cells (Sheet!B12)`,
    )
    .option("--office <file>", "office book, instead of the one the job names")
    .option(...bothOption)
    .option(
      "--json",
      "an object by name, each {value, unit}; tables as arrays of rows; faultyInputs, where there are any",
    )
    .addHelpText("after", `\nExample:\n  rillbook show garden-corner.json price ${figure} ${table}`)
    .action(
      async (
        file: string,
        names: string[],
        options: { office?: string; json?: true; both?: true },
      ) => {
        const evaluate = await evaluatorFor(options);
        const job = await openJob(file, context.templates, options.office, evaluate);
        const { model, values } = job;
        const errors = rootErrors(model, values);
        if (errors.length > 0) context.status = 1;
        const faulty = faultyInputs(model, values);
        for (const one of faulty) context.err(`${faultyInputInWords(one)}\n`);
        const wanted =
          names.length > 0 ? names.map((name) => askedFor(job, name)) : everyName(model);
        if (options.json) {
          const shown = Object.fromEntries(
            wanted.map((name) => [name, asJson(model, values, name)]),
          );
          // names of cells have no capital letters
          const told = faulty.length === 0 ? {} : { faultyInputs: faultyInputsAsJson(faulty) };
          context.json({ ...shown, ...told }, 2);
        } else {
          if (names.length === 0)
            tellStatus(context, model, values, standing(model, values, errors));
          tellNamed(context, job, wanted);
        }
        for (const line of errorsTold(errors)) context.err(`${line}\n`);
        context.err(shownOtherwise(job));
      },
    );
}

const standing = (model: Model, values: readonly Value[], errors: readonly unknown[]): boolean =>
  errors.length === 0 && failedChecks(model, values).every(({ level }) => level !== "must");

/** Single values under one another; tables and columns by themselves. */
function tellNamed({ out }: Context, job: OpenedJob, names: readonly string[]): void {
  const { model, values } = job;
  const single = names.filter((name) => model.byId.has(name) && !model.tables.has(name));
  out(
    aligned(
      single.map(
        (name) => [name, shownValue(model, model.byId.get(name) as Cell, values)] as const,
      ),
    ),
  );
  for (const name of names.filter((one) => !single.includes(one))) out(asText(job, name));
}

/** The values are calculated; a workbook may show others. */
function shownOtherwise({ model, values, shown }: OpenedJob): string {
  if (shown === undefined) return "";
  const others = model.cells.filter(
    ({ index, implied }) => !implied && !agree(shown[index] ?? null, values[index] ?? null),
  );
  const [first] = others;
  if (first === undefined) return "";
  const more =
    others.length === 1
      ? ""
      : ` and ${others.length === 2 ? "1 more cell" : `${others.length - 1} more cells`}`;
  return `The workbook itself shows something else in ${first.id}${more} than its inputs give. See rillbook audit.\n`;
}

function everyName(model: Model): string[] {
  const scalars = model.cells.filter((cell) => cell.table === undefined && !cell.implied);
  return [...scalars.map(({ name }) => name), ...model.tables.keys()];
}

function columnCells(model: Model, name: string): readonly Cell[] | undefined {
  const [table = "", key = ""] = name.split(".");
  return model.tables.get(table)?.columns.get(key)?.cells;
}

function asJson(model: Model, values: readonly Value[], name: string): unknown {
  const table = model.tables.get(name);
  if (table !== undefined) return rowsOf(model, table, values).map((row) => rowJson(row, values));
  const column = columnCells(model, name);
  if (column !== undefined) return column.map((cell) => cellJson(cell, values));
  return cellJson(model.byId.get(name) as Cell, values);
}

function rowJson(row: readonly Cell[], values: readonly Value[]): Record<string, unknown> {
  return Object.fromEntries(row.map((cell) => [cell.name.split(".")[1], cellJson(cell, values)]));
}

function cellJson(cell: Cell, values: readonly Value[]): { value: unknown; unit: string } {
  const value = values[cell.index] ?? null;
  if (value instanceof CellError) return { value: value.code, unit: "" };
  if (typeof value === "number" && cell.declaration.quantity.kind === "date") {
    return { value: value === 0 ? null : writtenDate(value), unit: "" };
  }
  return { value, unit: cell.unit.name };
}

/** The rows of a table that are in use; what stands ready in every row does not make one so. */
function rowsOf(model: Model, table: Table, values: readonly Value[]): Cell[][] {
  const columns = [...table.columns.values()];
  const ready = new Set(
    inputPlanOf(model).inputs.flatMap(({ cell, ready }) => (ready ? [cell.index] : [])),
  );
  const rows = Array.from({ length: table.block.rows }, (_, i) =>
    columns.map(({ cells }) => cells[i] as Cell),
  );
  return rows.filter((row) =>
    row.some(({ index, implied }) => {
      // what the compiler adds heads a row or tells of it
      if (implied || ready.has(index)) return false;
      const value = values[index];
      return value !== null && value !== "" && value !== 0 && typeof value !== "boolean";
    }),
  );
}

function asText(job: OpenedJob, name: string): string {
  const { model, values } = job;
  const table = model.tables.get(name);
  if (table !== undefined) {
    const rows = rowsOf(model, table, values);
    if (rows.length === 0) return noRows(job, table);
    const columns = [...table.columns.keys()].flatMap((key, i) =>
      isRead(table, key)
        ? [[key, ...rows.map((row) => shownValue(model, row[i] as Cell, values))]]
        : [],
    );
    const numbers = ["row", ...rows.map(([first]) => String(first?.row ?? ""))];
    return `${name}:\n${underOneAnother([numbers, ...columns])}`;
  }
  const column = columnCells(model, name);
  if (column !== undefined) {
    return `${name}: ${column.map((cell) => shownValue(model, cell, values)).join("; ")}\n`;
  }
  return `${name}: ${shownValue(model, model.byId.get(name) as Cell, values)}\n`;
}

/** Columns that nobody reads on a sheet are shown where they are asked for by name, or with a table of such alone. */
function isRead({ block, columns }: Table, key: string): boolean {
  const [first] = columns.get(key)?.cells ?? [];
  const declared = first?.declaration;
  const isWorking = declared !== undefined && "working" in declared && declared.working === true;
  return block.working === true || !(isWorking || first?.implied);
}

/** That a table has no row in use, and how a row is added where people type its rows. */
function noRows({ source }: OpenedJob, { block: { name }, columns }: Table): string {
  const [first] = [...columns.values()][0]?.cells ?? [];
  if (first?.declaration.kind !== "input") return `${name}: no row is in use.\n`;
  const { id, sheet, column, line, declaration } = first;
  const place = `${sheet}!${addressOf(column, line)}`;
  const how =
    source === "workbook"
      ? `type its ${declaration.label} (${id}) into ${place}`
      : `rillbook set <job> "${id}=…" --by <who> --from <where from>, or ${place} in its workbook`;
  return `${name}: no row is in use. To add one: ${how}.\n`;
}

/** A line for each column of a table, its rows side by side. */
function underOneAnother(lines: readonly (readonly string[])[]): string {
  const widths = (lines[0] ?? []).map((_, i) =>
    Math.max(...lines.map((line) => (line[i] ?? "").length)),
  );
  const padded = (line: readonly string[]) =>
    line.map((text, i) => text.padEnd(widths[i] as number)).join("  ");
  return lines.map((line) => `  ${padded(line).trimEnd()}\n`).join("");
}
