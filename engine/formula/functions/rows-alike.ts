import { compare, plainValue, sameText } from "../arithmetic/operators.js";
import type { Tree } from "../tree.js";
import type { Value } from "../value.js";
import type { Code, Coder } from "./description.js";
import { type FoundRows, rowsOfText } from "./text-rows.js";

/** Is the value of a row the one that is sought? As `=` has it; throws an error that stands in the row. */
function isSought(value: Value, sought: Value): boolean {
  if (value === sought && value !== null) return true;
  if (typeof value === "string" && typeof sought === "string") return sameText(value, sought);
  if (typeof value === "number" && typeof sought === "number") return false;
  return compare(value, sought) === 0;
}

/** How many rows of a column are the one that is sought. */
function countAlike(values: readonly Value[], from: number, rows: number, sought: Value): number {
  const found = rowsOfText(values, from, rows, sought);
  if (found !== undefined) return unlessError(found).length;
  let count = 0;
  for (let i = from; i < from + rows; i++) if (isSought(values[i] as Value, sought)) count += 1;
  return count;
}

/** The sum of another column over these rows; an error in any row of either is thrown, the first column's first. */
function sumAlike(
  values: readonly Value[],
  from: number,
  rows: number,
  sought: Value,
  summed: number,
): number {
  let total = 0;
  const add = (row: number) => {
    const value = values[summed + row];
    if (typeof value === "number") total += value;
  };
  const found = rowsOfText(values, from, rows, sought);
  if (found !== undefined) for (const row of unlessError(found)) add(row);
  else for (let i = 0; i < rows; i++) if (isSought(values[from + i] as Value, sought)) add(i);
  for (let i = summed; i < summed + rows; i++) {
    // of all values only errors and blanks are objects
    if (typeof values[i] === "object") plainValue(values[i] as Value);
  }
  return total;
}

function unlessError({ rows, error }: FoundRows): readonly number[] {
  if (error !== undefined) throw error;
  return rows;
}

/** `(column=sought)*1`, the way templates ask for the rows of a key: the column and what is sought. */
function asked(tree: Tree | undefined, { column, value }: Coder): [string, string] | undefined {
  if (tree?.kind !== "binary" || tree.operator !== "*") return undefined;
  const { left, right } = tree;
  if (right.kind !== "number" || right.value !== 1) return undefined;
  if (left.kind !== "binary" || left.operator !== "=" || !isSingle(left.right)) return undefined;
  const place = column(left.left);
  return place === undefined ? undefined : [place, value(left.right)];
}

const isSingle = ({ kind }: Tree): boolean =>
  ["scalar", "own", "text", "number", "boolean", "call"].includes(kind);

/** SUMPRODUCT over the rows of a key, without a list of them: most of a template's look-ups ask so. */
export const rowsAlike: Code = {
  write: (args, coder) => {
    const [place, sought] = asked(args[0], coder) ?? [];
    if (place === undefined) return undefined;
    if (args.length === 1) return `countAlike(${place},${sought})`;
    const [, rows] = place.split(",").slice(1);
    const [, from, others] = args.length === 2 ? (coder.column(args[1]) ?? "").split(",") : [];
    return from === undefined || others !== rows
      ? undefined
      : `finite(sumAlike(${place},${sought},${from}))`;
  },
  calls: { countAlike, sumAlike },
};
