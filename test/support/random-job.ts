import { columnsByInput } from "../../engine/book/codes.js";
import type { OfficeBook } from "../../engine/book/office-book.js";
import { askedFor } from "../../engine/job/asked-for.js";
import type { InputValues, JobRecord, RowValues } from "../../engine/job/record.js";
import { inUnit } from "../../engine/template/compile.js";
import type { InputDeclaration, InputValue, TableBlock } from "../../engine/template/declare.js";
import { columnOf, type Model } from "../../engine/template/model.js";
import { randomFrom } from "../../engine/weigh/random.js";

/** Rows that a random job fills in a table without rows of its own. */
const mostRows = 5;

/**
 * A job that a person could have written, the same for the same seed: numbers around their
 * defaults or within their limits, choices among those there are, codes out of the office book.
 */
export function randomJob(model: Model, book: OfficeBook, seed: number): JobRecord {
  const random = randomFrom(seed);
  const below = (n: number) => Math.floor(random() * n);
  const among = <T>(list: readonly T[]): T => list[below(list.length)] as T;
  const columns = columnsByInput(model);
  /** What the office book has for an input: any other text would be refused. */
  const inBook = (name: string): string[] | undefined => {
    const column = columns.get(name);
    const rows = column && (book.tables[column.from] ?? []);
    return rows?.flatMap((row) =>
      row[column?.key ?? ""] === undefined ? [] : [String(row[column?.key ?? ""])],
    );
  };

  const given = (name: string, cell: InputDeclaration, usual = cell.default): InputValue | null => {
    if (cell.optional && usual === undefined && random() < 0.7) return null;
    const { quantity, choices } = cell;
    const known = inBook(name);
    if (known !== undefined) {
      return usual !== undefined && (known.length === 0 || random() < 0.7)
        ? usual
        : (among(known) ?? null);
    }
    if (choices !== undefined) {
      const known = typeof choices === "string" ? texts(model, choices) : choices;
      return usual !== undefined && (known.length === 0 || random() < 0.7) ? usual : among(known);
    }
    if (quantity.kind === "yesno") return random() < 0.5;
    if (quantity.kind === "date") return `2026-0${1 + below(9)}-1${below(10)}`;
    if (quantity.kind === "text") {
      if (usual !== undefined) return usual;
      return `${name} ${below(1000)}`;
    }
    return numberFor(cell, usual as number | undefined);
  };

  const numberFor = (cell: InputDeclaration, usual: number | undefined): number => {
    const { least = 0, most = 40, whole } = cell;
    const middle =
      usual === undefined || usual === 0 ? least + random() * Math.min(most - least, 40) : usual;
    const varied = usual === 0 && random() < 0.5 ? 0 : middle * (0.8 + 0.4 * random());
    const kept = Math.min(Math.max(varied, least), most);
    if (whole) return Math.min(Math.max(Math.round(kept), Math.ceil(least)), Math.floor(most));
    return inUnit(Number(kept.toPrecision(4)), cell.quantity, model.system) as number;
  };

  const rowsOf = (block: TableBlock): RowValues[] => {
    const inputs = Object.entries(block.columns).flatMap(([key, cell]) =>
      cell.kind === "input" ? [[key, cell] as const] : [],
    );
    const rows =
      block.data?.length ??
      (block.filled === undefined ? block.rows : below(Math.min(block.rows, mostRows) + 1));
    return Array.from({ length: inputs.length === 0 ? 0 : rows }, (_, i) =>
      Object.fromEntries(
        inputs.map(([key, cell]) => [
          key,
          given(`${block.name}.${key}`, cell, block.data?.[i]?.[key] ?? cell.default),
        ]),
      ),
    );
  };

  const inputs: Record<string, InputValues[string]> = {};
  for (const block of askedFor(model)) {
    if (block.kind === "table") {
      const rows = rowsOf(block);
      if (rows.length > 0) inputs[block.name] = rows;
      continue;
    }
    for (const [name, cell] of Object.entries(block.cells)) {
      if (cell.kind === "input") inputs[name] = given(name, cell);
    }
  }
  const { name: template, version } = model.template;
  return {
    rillbook: 1,
    job: `random ${seed}`,
    template,
    version,
    units: model.system,
    about: "invented",
    inputs,
  };
}

/** The texts that a published column holds. */
function texts(model: Model, column: string): string[] {
  const [table = "", key = ""] = column.split(".");
  return columnOf(model, table, key).cells.flatMap(({ fixed }) =>
    typeof fixed === "string" ? [fixed] : [],
  );
}
