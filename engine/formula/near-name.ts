import { nearest, suggestion } from "./suggest.js";

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
  const [asked = "", word = ""] = name.split(".");
  if (word === "") return suggestion(given, known);
  const tables = new Set(known.filter((one) => one.includes(".")).map(tableOf));
  const table = tables.has(asked) ? asked : nearest(asked, tables);
  if (table === undefined) return suggestion(name, known);
  const keys = known.flatMap((one) =>
    one.startsWith(`${table}.`) ? [one.slice(table.length + 1)] : [],
  );
  const fitting = [
    (key: string) => key === word,
    (key: string) => key.endsWith(`_${word}`),
    (key: string) => key.startsWith(`${word}_`),
    (key: string) => key === nearest(word, keys),
  ];
  for (const fits of fitting) {
    const found = keys.filter(fits);
    if (found.length > 0) return meant(found.map((key) => `${table}.${key}${row}`));
  }
  return "";
}

const tableOf = (column: string): string => column.slice(0, column.indexOf("."));

const meant = (found: readonly string[]): string =>
  ` Did you mean ${found
    .slice(0, mostNames)
    .map((one) => `"${one}"`)
    .join(" or ")}?`;
