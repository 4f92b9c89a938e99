import { sameText } from "../arithmetic/operators.js";
import { CellError, type Value } from "../value.js";
import { KeptColumns } from "./kept-column.js";

/** Fewer rows are looked through sooner than found. */
const worthKeeping = 16;

/** Where the texts of a column stand. */
interface TextRows {
  /** The rows of each text that is `plainText`, from 0, in order. */
  readonly plain: ReadonlyMap<string, readonly number[]>;
  /** The rows of all others, which are for the collator. */
  readonly others: readonly (readonly [row: number, text: string])[];
  /** The first error of the column. */
  readonly error: CellError | undefined;
}

/** Rows of a column, from 0, in order. */
export interface FoundRows {
  readonly rows: readonly number[];
  /** The first error of the column. */
  readonly error: CellError | undefined;
}

const none: readonly number[] = [];
const kept = new KeptColumns(textRows);

function textRows(column: readonly Value[]): TextRows {
  const plain = new Map<string, number[]>();
  const others: (readonly [number, string])[] = [];
  let error: CellError | undefined;
  column.forEach((value, row) => {
    if (value instanceof CellError) error ??= value;
    if (typeof value !== "string") return;
    const key = plainText(value);
    const known = key === undefined ? undefined : plain.get(key);
    if (key === undefined) others.push([row, value]);
    else if (known === undefined) plain.set(key, [row]);
    else known.push(row);
  });
  return { plain, others, error };
}

/**
 * A text in lower case, if all of its characters are of ASCII and printed: two of these are the same to `sameText`
 * where they are letter by letter. Undefined for any other text.
 */
export function plainText(text: string): string | undefined {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < 32 || code > 126) return undefined;
  }
  return text.toLowerCase();
}

/** The rows of a column that hold a text, without regard to case; undefined where they are to be looked for one by one. */
export function rowsOfText(
  values: readonly Value[],
  from: number,
  rows: number,
  sought: Value,
): FoundRows | undefined {
  if (rows < worthKeeping || typeof sought !== "string" || sought === "") return undefined;
  const key = plainText(sought);
  if (key === undefined) return undefined;
  const { plain, others, error } = kept.of(values, from, rows);
  const found = plain.get(key) ?? none;
  if (others.length === 0) return { rows: found, error };
  const more = others.flatMap(([row, text]) => (sameText(text, sought) ? [row] : []));
  return { rows: more.length === 0 ? found : [...found, ...more].sort((a, b) => a - b), error };
}
