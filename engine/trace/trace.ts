import { rowsInUse } from "../evaluate/rows-in-use.js";
import type { Tree } from "../formula/tree.js";
import { plainValue } from "../job/plain-value.js";
import { shown } from "../job/shown-value.js";
import { type Cell, columnOf } from "../template/model.js";
import { formulaNode } from "./named.js";
import type { TraceNode } from "./node.js";
import { styleOf } from "./number-style.js";
import { inNames, inNumbers } from "./numbers.js";
import { originOf } from "./origin.js";
import { type Part, partsOfFormula } from "./parts.js";
import type { Traced } from "./traced.js";

/**
 * Shows where a figure comes from: its formula in names and in numbers, its result, and so on for
 * its parts down to `depth` levels of formulas. A cell that was opened once is not opened again.
 */
export function trace(job: Traced, cell: Cell, depth: number): TraceNode {
  return new Tracer(job).cell(cell, depth);
}

/** A whole column, with the rows in use as its parts. */
export function traceColumn(job: Traced, table: string, key: string, depth: number): TraceNode {
  return new Tracer(job).column(table, key, depth);
}

class Tracer {
  private readonly opened = new Set<string>();

  constructor(private readonly job: Traced) {}

  cell(cell: Cell, depth: number): TraceNode {
    const { model, values } = this.job;
    const value = values[cell.index] ?? null;
    const { label, kind, source } = cell.declaration;
    const node: TraceNode = {
      kind,
      name: cell.id,
      label,
      value: plainValue(value),
      unit: styleOf(cell, model.system).unit,
      shown: shown(model, cell, value),
      ...(source === undefined ? {} : { source }),
      parts: [],
      state: "leaf",
    };
    if (cell.spoken === undefined) {
      const origin = originOf(model, cell, values, this.job.origins);
      return origin === undefined ? node : { ...node, origin };
    }
    if (this.opened.has(cell.id)) return { ...node, state: "above" };
    if (depth <= 0) return { ...node, state: "closed" };
    this.opened.add(cell.id);
    const tree = this.formulaOf(cell);
    const written = inNumbers(model, cell, tree, { values }, (one) => shown(model, cell, one));
    const parts = partsOfFormula(model, cell, tree, values).map((part) =>
      this.part(part, cell, depth - 1),
    );
    return { ...node, formula: inNames(tree), ...written, parts, state: "opened" };
  }

  /** The formula proper where the row is in use, else the whole with its condition. */
  private formulaOf(cell: Cell): Tree {
    const { model, values } = this.job;
    const { inUse, table = "", row = 0 } = cell;
    const used = inUse !== undefined && rowsInUse(model, table, values).includes(row);
    return used ? inUse : (cell.spoken as Tree);
  }

  private part(part: Part, home: Cell, depth: number): TraceNode {
    if (part.kind === "cell") return this.cell(part.cell, depth);
    if (part.kind === "column") return this.column(part.table, part.column, depth);
    return formulaNode(this.job, home, part, depth, this.opened);
  }

  column(table: string, key: string, depth: number): TraceNode {
    const { model, values } = this.job;
    const { name, cells, declaration } = columnOf(model, table, key);
    const used = rowsInUse(model, table, values).map((row) => cells[row - 1] as Cell);
    const rows = used.map((cell) => ({
      row: cell.row ?? 0,
      value: plainValue(values[cell.index]),
      shown: shown(model, cell, values[cell.index] ?? null),
    }));
    const { kind, label, source } = declaration;
    const isFormula = kind === "calc" || kind === "check";
    const again = this.opened.has(name);
    const opens = isFormula ? depth > 0 && !again : kind === "input";
    if (opens) this.opened.add(name);
    return {
      kind: "column",
      name,
      label,
      value: null,
      unit: styleOf(cells[0] as Cell, model.system).unit,
      shown: `${rows.length} of ${cells.length} rows in use`,
      ...(source === undefined ? {} : { source }),
      rows,
      parts: opens ? used.map((cell) => this.cell(cell, depth)) : [],
      state: opens ? "opened" : !isFormula ? "leaf" : again ? "above" : "closed",
    };
  }
}
