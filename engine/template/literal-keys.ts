import { type Tree, walk } from "../formula/tree.js";
import type { CellDeclaration } from "./declare.js";
import type { Model, Table } from "./model.js";

/**
 * Texts that formulas look for where they cannot stand: a key that is in none of the fixed rows of
 * a column, `PICK(used_rates.value,used_rates.code,"dgi")`, or a word that is none of an input's choices.
 */
export function literalKeyFaults(model: Model): string[] {
  const faults = new Set<string>();
  const seen = new Set<Tree>();
  for (const { name, native } of model.cells) {
    if (native === undefined || seen.has(native)) continue;
    seen.add(native);
    for (const { key, place } of soughtIn(native)) {
      const known = wordsOf(model, place);
      if (known === undefined || key === "") continue;
      if (known.some((word) => word.toLowerCase() === key.toLowerCase())) continue;
      faults.add(
        `The formula of ${name} looks for "${key}" in ${place.name}, which holds only ${listed(known)}. Correct the word, or add its row.`,
      );
    }
  }
  return [...faults];
}

/** A column or a single cell. */
interface Place {
  readonly name: string;
  readonly table?: string;
  readonly column?: string;
}

/** The texts that a formula compares with a place, or looks up in it. */
function* soughtIn(tree: Tree): Generator<{ key: string; place: Place }> {
  for (const node of walk(tree)) {
    if (node.kind === "call" && node.name === "MATCH") yield* pair(node.args[0], node.args[1]);
    if (node.kind !== "binary" || (node.operator !== "=" && node.operator !== "<>")) continue;
    yield* pair(node.left, node.right);
    yield* pair(node.right, node.left);
  }
}

function* pair(key: Tree | undefined, from: Tree | undefined) {
  if (key?.kind !== "text" || from === undefined) return;
  if (from.kind === "scalar") yield { key: key.value, place: { name: from.name } };
  if (from.kind !== "column" && from.kind !== "own") return;
  const { table, column } = from;
  yield { key: key.value, place: { name: `${table}.${column}`, table, column } };
}

/** All texts that a place can hold; undefined where anything can be entered or calculated. */
function wordsOf(model: Model, { name, table, column }: Place): readonly string[] | undefined {
  if (table === undefined || column === undefined) {
    return wordsOfCell(model, model.byId.get(name)?.declaration);
  }
  const home = model.tables.get(table);
  const declaration = home?.columns.get(column)?.declaration;
  if (home !== undefined && declaration?.kind === "published") return fixedWords(home, column);
  return wordsOfCell(model, declaration);
}

function wordsOfCell(model: Model, cell: CellDeclaration | undefined) {
  if (cell?.kind === "published") return typeof cell.value === "string" ? [cell.value] : undefined;
  if (cell?.kind !== "input" || cell.choices === undefined) return undefined;
  if (typeof cell.choices !== "string") return cell.choices;
  const [table = "", column = ""] = cell.choices.split(".");
  const home = model.tables.get(table);
  const fixed = home?.columns.get(column)?.declaration.kind === "published";
  return home !== undefined && fixed ? fixedWords(home, column) : undefined;
}

const fixedWords = ({ block }: Table, column: string): string[] =>
  (block.data ?? []).flatMap((row) => (typeof row[column] === "string" ? [row[column]] : []));

/** The first few, so that a fault stays a sentence. */
function listed(words: readonly string[]): string {
  const shown = words.slice(0, 8).map((word) => `"${word}"`);
  return words.length > shown.length ? `${shown.join(", ")} and others` : shown.join(", ");
}
