import { tokensOf } from "../formula/tokens.js";
import type { TableBlock } from "./declare.js";

/**
 * The formulas of one row of a table, seen from outside it: where the text names a column of the
 * tables barely, it gets that column at the row. `width > 0` is `INDEX(runs.length,3) > 0` in row 3.
 *
 * @param row its number, or a formula for it
 * @param tables the table, and those beside it; the first that has the column gives it
 */
export function formulaInRow(
  formula: string,
  row: number | string,
  tables: readonly TableBlock[],
): string {
  const tokens = tokensOf(formula);
  let made = formula;
  for (const [i, { kind, text, at }] of [...tokens.entries()].reverse()) {
    const called = tokens[i + 1]?.text === "(";
    const column = kind === "name" && !called ? columnNamed(text, tables) : undefined;
    if (column === undefined) continue;
    made = `${made.slice(0, at)}INDEX(${column},${row})${made.slice(at + text.length)}`;
  }
  return made;
}

/** A sentence whose braces name the columns of a row barely; `{row}` is the row's number. */
export function sentenceInRow(
  sentence: string,
  row: number,
  tables: readonly TableBlock[],
): string {
  return sentence.replace(/\{([^}]*?)((?:\|[a-z0-9]+)*)\}/g, (_, name: string, style: string) => {
    if (name === "row") return String(row);
    const column = columnNamed(name, tables);
    if (column !== undefined) return `{${column}[${row}]${style}}`;
    return `{${formulaInRow(name, row, tables)}${style}}`;
  });
}

function columnNamed(name: string, tables: readonly TableBlock[]): string | undefined {
  const home = tables.find(({ columns }) => Object.hasOwn(columns, name));
  return home === undefined ? undefined : `${home.name}.${name}`;
}
