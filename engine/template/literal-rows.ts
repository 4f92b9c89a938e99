import { type Tree, walk } from "../formula/tree.js";
import type { Cell, Model } from "./model.js";

/** Rows of a column that formulas name by number: `INDEX(runs.length,3)`. */
interface Named {
  readonly table: string;
  readonly column: string;
  readonly rows: Set<number>;
}

/**
 * Rows named by number that a table does not have, and sets of formulas that go over the first
 * rows of a table one by one and stop short of its last: what stands beyond would be left out.
 */
export function literalRowFaults(model: Model): string[] {
  const faults = new Set<string>();
  for (const [name, cells] of byName(model.cells)) {
    for (const named of namedRows(cells)) {
      const has = model.tables.get(named.table)?.block.rows ?? 0;
      const column = `${named.table}.${named.column}`;
      const rows = [...named.rows].sort((a, b) => a - b);
      const beyond = rows.find((row) => row > has);
      if (beyond !== undefined) {
        faults.add(
          `The formula of ${name} reads row ${beyond} of ${column}, but the table ${named.table} has ${has} rows. Read a row that it has, or raise its rows.`,
        );
      } else if (stopsShort(rows, has)) {
        faults.add(
          `The formulas of ${name} go over rows 1 to ${rows.length} of ${column}, but the table ${named.table} has ${has}: the rest would be left out. Go over as many rows as the table has.`,
        );
      }
    }
  }
  return [...faults];
}

/** 1, 2, 3 … and no more, of a longer table. One row alone is no walk: the first is often meant. */
const stopsShort = (rows: readonly number[], has: number): boolean =>
  rows.length > 1 && rows.length < has && rows.every((row, i) => row === i + 1);

/** The formulas that belong together: those of a column, or of one cell. */
function byName(cells: readonly Cell[]): Map<string, Set<Tree>> {
  const found = new Map<string, Set<Tree>>();
  for (const { name, spoken } of cells) {
    if (spoken === undefined) continue;
    const trees = found.get(name) ?? new Set();
    found.set(name, trees.add(spoken));
  }
  return found;
}

function namedRows(trees: Iterable<Tree>): Iterable<Named> {
  const found = new Map<string, Named>();
  for (const tree of trees) {
    for (const node of walk(tree)) {
      if (node.kind !== "call" || node.name !== "INDEX") continue;
      const [column, row] = node.args;
      if (column?.kind !== "column" || row?.kind !== "number") continue;
      const key = `${column.table}.${column.column}`;
      const named = found.get(key) ?? { ...column, rows: new Set<number>() };
      named.rows.add(row.value);
      found.set(key, named);
    }
  }
  return found.values();
}
