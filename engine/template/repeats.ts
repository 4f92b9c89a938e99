import { addressOf } from "./layout.js";
import type { Cell, Model } from "./model.js";

/** A place in column A where a further band of a table shows again what heads a row. */
export interface Repeat {
  readonly line: number;
  readonly of: Cell;
}

/** The first column of a sheet's tables, as their further bands repeat it. */
export function repeatsOf(model: Pick<Model, "cells" | "placed">, sheet: string): Repeat[] {
  return model.placed.flatMap(({ block, sheet: home, bands }) => {
    if (block.kind !== "table" || home !== sheet) return [];
    const first = `${block.name}.${bands[0]?.columns[0]}`;
    const further = bands.filter(({ repeats }) => repeats);
    if (further.length === 0) return [];
    const cells = model.cells.filter(({ name }) => name === first);
    return further.flatMap(({ header }) =>
      cells.map((of) => ({ line: header + 1 + (of.row ?? 0), of })),
    );
  });
}

/** The formula of a repeat: an empty text cell referred to would show as zero. */
export function repeatFormula({ column, line, declaration }: Cell): string {
  const from = addressOf(column, line);
  return declaration.quantity.kind === "text" ? `${from}&""` : from;
}
