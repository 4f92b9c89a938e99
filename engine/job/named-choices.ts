import type { CellDeclaration } from "../template/declare.js";
import type { Cell, Model, Table } from "../template/model.js";
import { choiceNamed } from "../text/choice.js";

/** A text given for an input, as the list of its choices spells it: `ft2` is `ft²`. Other values stay as they are. */
export const asListed = (cell: Cell | undefined, value: unknown): unknown =>
  typeof value === "string" ? listedIn(cell?.declaration, value) : value;

function listedIn(declaration: CellDeclaration | undefined, value: string): string {
  if (declaration?.kind !== "input") return value;
  const { choices } = declaration;
  return Array.isArray(choices) ? (choiceNamed(value, choices) ?? value) : value;
}

/** The inputs of a parsed record, whatever it holds, with their choices so spelled. */
export function withNamedChoices(model: Model, record: unknown): unknown {
  const { inputs } = (record ?? {}) as { inputs?: unknown };
  if (!isObject(record) || !isObject(inputs)) return record;
  const ofRow = (table: Table | undefined, row: unknown, i: number) =>
    isObject(row)
      ? mapped(row, (key, value) => {
          if (typeof value !== "string") return value;
          const column = table?.columns.get(key);
          // the rows of a column share what is declared
          return column === undefined || i >= column.cells.length
            ? value
            : listedIn(column.declaration, value);
        })
      : row;
  const named = mapped(inputs, (name, value) => {
    if (!Array.isArray(value)) return asListed(model.byId.get(name), value);
    const table = model.tables.get(name);
    const rows = value.map((row, i) => ofRow(table, row, i));
    return rows.every((row, i) => row === value[i]) ? value : rows;
  });
  return named === inputs ? record : { ...record, inputs: named };
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

type Entries = Readonly<Record<string, unknown>>;

/** The same object where nothing in it changes. */
function mapped(all: Entries, of: (key: string, value: unknown) => unknown): Entries {
  let now: Record<string, unknown> | undefined;
  for (const key of Object.keys(all)) {
    const value = of(key, all[key]);
    if (value === all[key]) continue;
    now ??= Object.fromEntries(Object.entries(all));
    now[key] = value;
  }
  return now ?? all;
}
