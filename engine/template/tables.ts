import type { SheetDeclaration } from "./declare.js";
import type { Cell, Column, Condition, Table } from "./model.js";

/** Under which the condition is kept that a row is worth a look. */
export const shownKey = (table: string): string => `${table} shown`;

/** Gathers the cells of tables into columns; `conditions` tell by table which rows are in use. */
export function tablesOf(
  cells: readonly Cell[],
  sheets: readonly SheetDeclaration[],
  conditions: ReadonlyMap<string, Condition>,
): ReadonlyMap<string, Table> {
  const columnCells = new Map<string, Cell[]>();
  for (const cell of cells) {
    if (cell.table === undefined) continue;
    const found = columnCells.get(cell.name);
    if (found === undefined) columnCells.set(cell.name, [cell]);
    else found.push(cell);
  }
  const tables = new Map<string, Table>();
  const blocks = sheets.flatMap((sheet) =>
    sheet.blocks.map((block) => ({ block, home: sheet.name })),
  );
  for (const { block, home } of blocks) {
    if (block.kind !== "table") continue;
    const columns = new Map<string, Column>();
    for (const [key, declaration] of Object.entries(block.columns)) {
      const name = `${block.name}.${key}`;
      const found = columnCells.get(name) ?? [];
      columns.set(key, { name, table: block.name, key, declaration, cells: found });
    }
    const filled = conditions.get(block.name);
    const shown = conditions.get(shownKey(block.name));
    const condition = {
      ...(filled === undefined ? {} : { filled }),
      ...(shown === undefined ? {} : { shown }),
    };
    tables.set(block.name, { name: block.name, home, block, columns, ...condition });
  }
  return tables;
}
