import { agree, type OpenedJob } from "../audit/index.js";
import type { Value } from "../formula/value.js";
import { shown } from "../job/shown-value.js";
import { columnOf, type Table } from "../template/model.js";

/** A figure of an office-book line that changed, came or went. */
export interface PriceChange {
  readonly table: string;
  readonly code: string;
  readonly label: string;
  /** `(blank)` where the line is in one job only. */
  readonly oldShown: string;
  readonly newShown: string;
}

/** The lines of the office book that differ, told apart by their code whatever row they stand in. */
export function priceChanges(a: OpenedJob, b: OpenedJob): PriceChange[] {
  return [...b.model.tables.values()].flatMap((table) => {
    const before = a.model.tables.get(table.name);
    if (table.block.from === undefined || before === undefined) return [];
    const [old, now] = [linesOf(a, before), linesOf(b, table)];
    return [...new Set([...old.keys(), ...now.keys()])].flatMap((code) =>
      changesOf(table, code, old.get(code), now.get(code)),
    );
  });
}

interface Figure {
  readonly label: string;
  readonly value: Value;
  readonly shown: string;
}

/** By code, then by column. */
type Lines = ReadonlyMap<string, ReadonlyMap<string, Figure>>;

function linesOf({ model, values }: OpenedJob, table: Table): Lines {
  const lines = new Map<string, Map<string, Figure>>();
  if (!table.columns.has("code")) return lines;
  columnOf(model, table.name, "code").cells.forEach(({ index }, row) => {
    const code = values[index];
    if (typeof code !== "string" || code === "") return;
    const figures = [...table.columns.values()].flatMap(({ key, declaration, cells }) => {
      const cell = cells[row];
      if (declaration.kind !== "book" || key === "code" || cell === undefined) return [];
      const value = values[cell.index] ?? null;
      const { label } = declaration;
      return [[key, { label, value, shown: shown(model, cell, value) }] as const];
    });
    lines.set(code.toLowerCase(), new Map(figures));
  });
  return lines;
}

function changesOf(
  { name: table }: Table,
  code: string,
  old: ReadonlyMap<string, Figure> | undefined,
  now: ReadonlyMap<string, Figure> | undefined,
): PriceChange[] {
  if (old === undefined || now === undefined) {
    const [oldShown, newShown] = old === undefined ? ["not in it", "new"] : ["in it", "left out"];
    return [{ table, code, label: "Line of the office book", oldShown, newShown }];
  }
  return [...now].flatMap(([key, { label, value, shown: newShown }]) => {
    const before = old.get(key);
    if (before === undefined || agree(before.value, value)) return [];
    return [{ table, code, label, oldShown: before.shown, newShown }];
  });
}
