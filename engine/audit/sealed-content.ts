import type { Value } from "../formula/value.js";
import { recorded } from "../job/trail/inputs.js";
import type { SealedContent } from "../seal/index.js";
import type { InputValue } from "../template/declare.js";
import type { Cell } from "../template/model.js";
import type { WorkbookIdentity } from "../workbook/match/identity.js";
import { positionOf } from "../workbook/read/address.js";
import type { SheetContent } from "../workbook/read/content.js";
import { printAreas, within } from "./printed-part.js";
import type { Recalculation } from "./recalculate.js";
import { agree, formulaIn, heldBy, heldValue, type Subject } from "./subject.js";

/**
 * What of a workbook a seal stands over: its inputs and prices as they are, each value as it is shown, each line
 * of the pages that are handed out. A shown value that agrees with the template's own counts as that, so that
 * what programs change in the last digits by recalculating breaks no seal.
 */
export function sealedContent(
  subject: Subject,
  identity: WorkbookIdentity,
  { shown, byTemplate }: Recalculation,
): SealedContent {
  const { job, about, trailHead, book, bookAsOf } = identity;
  const values = shown.map((value, i) => {
    const own = byTemplate[i] ?? null;
    return agree(value, own) ? own : value;
  });
  return {
    job: { job, about, trailHead },
    inputs: given(subject, "input"),
    book: { book, bookAsOf },
    prices: given(subject, "book"),
    values,
    pages: pages(subject, values),
  };
}

function given({ model, match }: Subject, kind: "input" | "book"): Map<string, InputValue> {
  const found = new Map<string, InputValue>();
  for (const cell of model.cells) {
    const place = cell.declaration.kind === kind ? match.at.get(cell.id) : undefined;
    if (place === undefined) continue;
    const formula = formulaIn(cell, place.cell);
    const value =
      formula === undefined ? recorded(cell, heldBy(cell, place.cell.value)) : `=${formula}`;
    const bare = typeof value === "string" ? value.trim() : value;
    if (bare !== null && bare !== "") found.set(cell.id, bare);
  }
  return found;
}

/** The filled cells of what prints of each page, line by line. */
function pages(subject: Subject, values: readonly Value[]): Record<string, Value[][]> {
  const { content, model, match } = subject;
  const own = new Map<string, Cell>();
  for (const cell of model.cells) {
    const place = match.at.get(cell.id);
    if (place !== undefined) own.set(`${place.sheet}!${place.address}`, cell);
  }
  return Object.fromEntries(
    model.sheets.flatMap(({ name, handout }) => {
      const called = match.sheets.get(name) ?? name;
      const sheet = handout ? content.sheets.find((one) => one.name === called) : undefined;
      if (sheet === undefined) return [];
      const areas = printAreas(content, called);
      const valueAt = (address: string, held: Value): Value => {
        const cell = own.get(`${called}!${address}`);
        return cell === undefined ? held : (values[cell.index] ?? null);
      };
      return [[name, linesOf(sheet, (at) => within(areas, at), valueAt)]];
    }),
  );
}

function linesOf(
  { cells }: SheetContent,
  printed: (at: { row: number; column: number }) => boolean,
  valueAt: (address: string, held: Value) => Value,
): Value[][] {
  const lines = new Map<number, { column: number; value: Value }[]>();
  for (const [address, { value: held }] of cells) {
    const at = positionOf(address);
    if (at === undefined || !printed(at)) continue;
    const value = valueAt(address, heldValue(held));
    if (value === null || (typeof value === "string" && value.trim() === "")) continue;
    const line = lines.get(at.row) ?? [];
    line.push({ column: at.column, value });
    lines.set(at.row, line);
  }
  const rows = [...lines].sort(([a], [b]) => a - b);
  return rows.map(([, line]) => line.sort((a, b) => a.column - b.column).map(({ value }) => value));
}
