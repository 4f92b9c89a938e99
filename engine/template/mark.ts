import { createHash } from "node:crypto";
import { describeMeasure, type NamedFormula } from "../formula/named-formula.js";
import type { Block, CellDeclaration, FormulaText } from "./declare.js";
import type { Template } from "./template.js";

const marks = new WeakMap<Template, string>();

/**
 * SHA-256 of what a template calculates and asks: names, units, formulas, figures, defaults and limits. Words, looks and
 * the order of its sheets do not count, nor does how its file spells it.
 */
export function templateMark(template: Template): string {
  const known = marks.get(template);
  if (known !== undefined) return known;
  const { name, version, sheets, formulas } = template;
  const cells = sheets.flatMap(({ blocks }) => blocks.flatMap(saidOfBlock)).sort();
  const named = formulas.map(saidOfFormula).sort();
  const text = JSON.stringify([name, version, cells, named]);
  const mark = createHash("sha256").update(text).digest("hex");
  marks.set(template, mark);
  return mark;
}

function saidOfBlock(block: Block): string[] {
  if (block.kind === "table") {
    const { name, rows, filled, beside, data, from, usedBy } = block;
    const own = JSON.stringify([name, rows, filled, beside, data, from, usedBy]);
    const columns = Object.entries(block.columns);
    return [own, ...columns.map(([key, cell]) => saidOfCell(`${name}.${key}`, cell, rows))];
  }
  if (!("cells" in block)) return [];
  return Object.entries(block.cells).map(([name, cell]) => saidOfCell(name, cell, 1));
}

/** What only people read of a cell, or where it stands. */
const words: ReadonlySet<string> = new Set([
  ...["label", "note", "source", "decimals", "quantity", "sentence", "toldAt", "section"],
  ...["strong", "working", "reader", "again"],
]);

function saidOfCell(name: string, cell: CellDeclaration, rows: number): string {
  const { kind, units } = cell.quantity;
  const told = Object.entries(cell)
    .filter(([key]) => !words.has(key))
    .map(([key, value]) => [key, key === "formula" ? textsOf(value as FormulaText, rows) : value])
    .sort();
  return JSON.stringify([name, kind, units.us.name, units.si.name, told]);
}

const textsOf = (formula: FormulaText, rows: number): string[] =>
  typeof formula === "string" ? [formula] : Array.from({ length: rows }, (_, i) => formula(i + 1));

const saidOfFormula = ({ name, parameters, result, text }: NamedFormula): string =>
  JSON.stringify([
    name,
    parameters.map((one) => [one.name, describeMeasure(one.measure)]),
    describeMeasure(result),
    text,
  ]);
