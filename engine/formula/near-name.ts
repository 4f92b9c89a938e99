import { suggestion } from "./suggest.js";

/** How many names are told where several fit alike. */
const mostNames = 3;

/**
 * ` Did you mean "runs.cost_each"?`: of a table's column, those of the table that end with the word asked for, or begin
 * with it, else the one that is spelled most alike. Nothing where none is near.
 *
 * @param given as asked for, with a row or without
 * @param known names of cells and columns, without rows
 */
export function nearName(given: string, known: readonly string[]): string {
  const [, name = "", row = ""] = /^(.*?)(\[\d+\])?$/.exec(given.toLowerCase()) ?? [];
  const [table = "", word = ""] = name.split(".");
  const columns = known.filter((one) => one.startsWith(`${table}.`));
  if (word === "" || columns.length === 0) return suggestion(given, known);
  const keyOf = (column: string) => column.slice(table.length + 1);
  const holds = [
    (key: string) => key.endsWith(`_${word}`),
    (key: string) => key.startsWith(`${word}_`),
  ];
  for (const fits of holds) {
    const found = columns.filter((one) => fits(keyOf(one)));
    if (found.length > 0) return meant(found, row);
  }
  return suggestion(name, columns) || suggestion(name, known);
}

const meant = (found: readonly string[], row: string): string =>
  ` Did you mean ${found
    .slice(0, mostNames)
    .map((one) => `"${one}${row}"`)
    .join(" or ")}?`;
