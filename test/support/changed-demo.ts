import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { OfficeBook } from "../../engine/book/office-book.js";
import { readOfficeBook } from "../../engine/book/read.js";
import { valuesOf } from "../../engine/book/values.js";
import { calculateFast } from "../../engine/evaluate/calculate.js";
import type { Value } from "../../engine/formula/value.js";
import type { JobRecord } from "../../engine/job/record.js";
import type { Cell } from "../../engine/template/model.js";
import { modelOf } from "../../engine/template/models.js";
import { layoutOf } from "../../engine/template/office-layout.js";
import type { Template } from "../../engine/template/template.js";
import { waterfall } from "../../sheets/templates/waterfall.js";
import { demoFolder } from "./demo.js";
import { linesOf, type PageName, pageCells } from "./page-cells.js";

export type Changes = Record<string, unknown>;

export const book = await readOfficeBook(join(demoFolder, "office-book.json"), layoutOf(waterfall));

/**
 * What a job record cannot say: another office book, and values pasted into cells by their
 * id, past an input's list of choices or over a formula, as the workbook lets anybody do.
 */
export interface Elsewhere {
  readonly prices?: OfficeBook;
  readonly pasted?: Changes;
}

/** The demo's office book with its first machine changed. */
export const withMachine = (changed: Changes): OfficeBook => {
  const { machines = [] } = book.tables;
  const rows = machines.map((row, i) => (i === 0 ? { ...row, ...changed } : row));
  return { ...book, tables: { ...book.tables, machines: rows as typeof machines } };
};

/** A demo of a template, to be changed and calculated again. */
export function demoOf(template: Template, file: string) {
  const model = modelOf(template, "us");
  const demo: JobRecord = JSON.parse(readFileSync(join(demoFolder, file), "utf8"));

  function cellOf(id: string): Cell {
    const cell = model.byId.get(id);
    if (cell === undefined) throw new Error(`No cell ${id}`);
    return cell;
  }

  /** The demo with some of its inputs changed, calculated. */
  function changedDemo(changed: Changes, elsewhere: Elsewhere = {}): readonly Value[] {
    const job = { ...demo, inputs: { ...demo.inputs, ...changed } } as JobRecord;
    const given = [...valuesOf(model, job, elsewhere.prices ?? book)];
    const pasted = Object.entries(elsewhere.pasted ?? {});
    for (const [id, value] of pasted) given[cellOf(id).index] = value as Value;
    const over = new Set(pasted.map(([id]) => id));
    const lost = model.order.some(({ id }) => over.has(id));
    // a formula pasted over is no longer calculated
    const left = lost ? { ...model, order: model.order.filter(({ id }) => !over.has(id)) } : model;
    return calculateFast(left, given);
  }

  /** The rows of an input table of the demo. */
  const demoRows = (table: string): readonly Changes[] => demo.inputs[table] as readonly Changes[];

  /** A table of the demo with some columns of its first row changed. */
  const firstRow = (table: string, changed: Changes): Changes => ({
    [table]: demoRows(table).map((row, i) => (i === 0 ? { ...row, ...changed } : row)),
  });

  /** What a cell shows in such a job, by its id (`falls.width[2]`). */
  const shown = (values: readonly Value[], id: string): Value => values[cellOf(id).index] ?? null;

  /** The checks that say no, columns by name; one that shows an error says nothing. */
  const failingIn = (values: readonly Value[]): Set<string> =>
    new Set(
      model.cells
        .filter(({ declaration, index }) => declaration.kind === "check" && values[index] === false)
        .map(({ name }) => name),
    );

  return { model, demo, changedDemo, demoRows, firstRow, shown, failingIn };
}

export type Demo = ReturnType<typeof demoOf>;

export const waterfallDemo = demoOf(waterfall, "hillside-stream.json");
export const { model, demo, changedDemo, demoRows, firstRow, shown, failingIn } = waterfallDemo;

/** The lines of a page that stand on it. */
export const pageOf = (values: readonly Value[], page: PageName): string[] =>
  pageCells(model, page)
    .flatMap((cell) => {
      const value = values[cell.index];
      return typeof value === "string" ? linesOf(cell, value) : [];
    })
    .filter((line) => line !== "");

/** Both pages of such a job, and its values by the names of cells. */
export function pagesAfter(changed: Changes = {}, elsewhere: Elsewhere = {}) {
  const values = changedDemo(changed, elsewhere);
  return {
    proposal: pageOf(values, "proposal"),
    crew: pageOf(values, "crew"),
    orders: pageOf(values, "orders"),
    handOver: pageOf(values, "handOver"),
    value: (id: string) => shown(values, id),
  };
}
