import { suggestion } from "../formula/suggest.js";
import type { BookColumn, BookRow, BookTable } from "../template/book-layout.js";
import type { InputValue } from "../template/declare.js";
import { checkCell, type RawCell } from "./cell.js";
import type { RawRow, RawTable } from "./raw-book.js";

/** The rows of a table, and where those stand that are marked as placeholders. */
interface Checked {
  readonly rows: readonly BookRow[];
  readonly placeholders: readonly PlaceholderRow[];
}

/** A row marked as a placeholder: its place for people, and its code, where its table has codes. */
export interface PlaceholderRow {
  readonly place: string;
  readonly code?: string;
}

/** Checks the rows of one table; what is wrong goes into `faults`, each with its place. */
export function checkTable(
  table: BookTable,
  raw: RawTable,
  where: string,
  faults: string[],
): Checked {
  const unfit = raw.columns === undefined ? [] : columnFaults(table, raw.columns, where);
  faults.push(...unfit);
  // without its columns every row would be reported
  if (unfit.length > 0) return { rows: [], placeholders: [] };
  const { key: keys = ["code"] } = table;
  const seen = new Map<string, number>();
  const rows: BookRow[] = [];
  const placeholders: PlaceholderRow[] = [];
  for (const { at, cells } of raw.rows) {
    if (isEmpty(table, cells)) continue;
    const named = keys.filter((key) => !isBlank(cells[key]));
    const told = named.map((key) => `, ${key} ${JSON.stringify(cells[key])}`).join("");
    const place = `${where}, row ${at}${told}`;
    const row = checkRow({ table, letters: raw.letters ?? {}, at, place, faults }, cells);
    const known = keys.map((key) => String(row[key] ?? "").toLowerCase()).join("|");
    const before = seen.get(known);
    if (known !== "" && before !== undefined) {
      faults.push(
        `${place}: row ${before} has the same ${keys.join(" and ")}, and upper and lower case count as one. Give each its own, or take one out.`,
      );
    }
    if (!seen.has(known)) seen.set(known, at);
    rows.push(row);
    if (row.placeholder === true) {
      const letter = raw.letters?.placeholder;
      const cell = letter === undefined ? "" : ` (cell ${letter}${at})`;
      placeholders.push({
        place: `row ${at}${cell}${told}`,
        ...(typeof row.code === "string" ? { code: row.code } : {}),
      });
    }
  }
  return { rows, placeholders };
}

function columnFaults(table: BookTable, columns: readonly string[], where: string): string[] {
  const keys = table.columns.map(({ key }) => key);
  const missing = table.columns
    .filter(({ key, required }) => required && !columns.includes(key))
    .map(({ key, means }) => `${where}: the column "${key}" (${means}) is missing. Add it.`);
  const unknown = columns
    .filter((key) => !keys.includes(key))
    .map(
      (key) =>
        `${where}: the column "${key}" is not known.${suggestion(key, keys)} Rename it, or move it to a sheet of its own.`,
    );
  const twice = columns
    .filter((key, i) => columns.indexOf(key) !== i)
    .map((key) => `${where}: the column "${key}" stands twice. Take one out.`);
  return [...missing, ...unknown, ...twice];
}

/** A row that is looked at: its table, where it stands, and where its faults go. */
interface Looked {
  readonly table: BookTable;
  readonly letters: Readonly<Record<string, string>>;
  readonly at: number;
  readonly place: string;
  readonly faults: string[];
}

function checkRow(looked: Looked, cells: RawRow["cells"]): BookRow {
  const { table, letters, at, place, faults } = looked;
  const row: Record<string, InputValue> = {};
  const before = faults.length;
  for (const declared of table.columns) {
    const { key } = declared;
    const column = columnOf(looked, declared, cells.rule);
    if (column === undefined) continue;
    const checked = checkCell(column, cells[key]);
    const cell = letters[key] === undefined ? key : `${key} (${letters[key]}${at})`;
    if ("fault" in checked) faults.push(`${place}: ${cell} ${checked.fault}`);
    else if (checked.value !== undefined && !column.guide) row[key] = checked.value;
  }
  const keys = table.columns.map(({ key }) => key);
  for (const key of Object.keys(cells)) {
    if (keys.includes(key)) continue;
    faults.push(
      `${place}: "${key}" is not known.${suggestion(key, keys)} Rename it or take it out.`,
    );
  }
  const broken = faults.length === before ? table.rule?.(row) : undefined;
  if (broken !== undefined) faults.push(`${place}: ${broken}`);
  return row;
}

/** A column, and for the value of a rule what this rule may be; undefined where the rule is not known, which is told. */
function columnOf(
  { table, place, faults }: Looked,
  column: BookColumn,
  rule: RawCell,
): BookColumn | undefined {
  if (table.rules === undefined || column.key !== "value") return column;
  const name = typeof rule === "string" ? rule.trim() : "";
  const own = table.rules.get(name);
  if (own === undefined && name !== "") {
    faults.push(
      `${place}: no template has a rule "${name}".${suggestion(name, [...table.rules.keys()])} Correct its name, or take the row out.`,
    );
  }
  return own;
}

/** A row without anything that is read: blank, or a heading. */
function isEmpty({ columns }: BookTable, cells: RawRow["cells"]): boolean {
  const guides = new Set(columns.flatMap(({ key, guide }) => (guide ? [key] : [])));
  return Object.entries(cells).every(([key, cell]) => guides.has(key) || isBlank(cell));
}

const isBlank = (cell: RawCell): boolean =>
  cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");
