import type { BookColumn, BookLayout, BookRow, BookTable } from "./book-layout.js";

/**
 * A layout with what those of other templates have besides: one office book then serves them all. Where two
 * declare the same rule, row or table, the first one's words and limits hold.
 */
export function sharedLayout(own: BookLayout, others: readonly BookLayout[]): BookLayout {
  return others.reduce(joined, own);
}

function joined(layout: BookLayout, other: BookLayout): BookLayout {
  const names = new Set(layout.map(({ name }) => name));
  const tables = layout.map((table) => {
    const same = other.find(({ name }) => name === table.name);
    return same === undefined ? table : joinedTable(table, same);
  });
  return [...tables, ...other.filter(({ name }) => !names.has(name))];
}

function joinedTable(table: BookTable, other: BookTable): BookTable {
  const [key] = table.key ?? ["code"];
  // rows that count by their place are the first template's own
  if (key === undefined) return table;
  const { starter = [], rules, groups } = table;
  const nameOf = (row: BookRow) => String(row[key]).toLowerCase();
  const known = new Set(starter.map(nameOf));
  const more = (other.starter ?? []).filter((row) => !known.has(nameOf(row)));
  return {
    ...table,
    columns: table.columns.map((column) => withChoices(column, other)),
    starter: [...starter, ...more],
    ...(rules && { rules: new Map([...(other.rules ?? []), ...rules]) }),
    ...(groups && { groups: new Map([...(other.groups ?? []), ...groups]) }),
  };
}

/** A column of a table whose rows are named takes the names of both. */
function withChoices(column: BookColumn, { fixed, key = [], columns }: BookTable): BookColumn {
  if (!fixed || column.key !== key[0] || column.choices === undefined) return column;
  const others = columns.find(({ key: same }) => same === column.key)?.choices ?? [];
  return { ...column, choices: [...new Set([...column.choices, ...others])] };
}
