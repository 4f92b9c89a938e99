import type { Block, CellDeclaration, SheetDeclaration, TableBlock } from "./declare.js";

/** A name in a sentence: words joined by underscores or dots. A word alone may be one of the language. */
const inSentence = /\{[^}]*\}|[a-z][a-z0-9]*(?:[_.][a-z0-9]+)+/g;

/** What a name stands for on the sheets: its words there, and how it is written everywhere. */
interface Named {
  readonly label: string;
  readonly name: string;
}

/**
 * The sheets with the sentences of their checks speaking of inputs and tables as the sheets do: of
 * `people_to_carry` becomes `People on hand (people_to_carry)`, where it comes again `People on hand`.
 */
export function withLabels(sheets: readonly SheetDeclaration[]): SheetDeclaration[] {
  const known = namesOf(sheets);
  return sheets.map((sheet) => ({
    ...sheet,
    blocks: sheet.blocks.map((block) => labelledBlock(block, known)),
  }));
}

function labelledBlock(block: Block, known: ReadonlyMap<string, Named>): Block {
  if (block.kind === "part") return { ...block, of: labelledTable(block.of, known) };
  if (block.kind === "table") return labelledTable(block, known);
  if (block.kind !== "lines") return block;
  return { ...block, cells: labelledCells(block.cells, (name) => known.get(name)) };
}

const labelledTable = (table: TableBlock, known: ReadonlyMap<string, Named>): TableBlock => ({
  ...table,
  columns: labelledCells(
    table.columns,
    (name) => known.get(`${table.name}.${name}`) ?? known.get(name),
  ),
});

function labelledCells(
  cells: Readonly<Record<string, CellDeclaration>>,
  named: (name: string) => Named | undefined,
): Record<string, CellDeclaration> {
  const entries = Object.entries(cells).map(([key, cell]) => [
    key,
    cell.kind === "check" ? { ...cell, sentence: labelled(cell.sentence, named) } : cell,
  ]);
  return Object.fromEntries(entries);
}

function labelled(sentence: string, named: (name: string) => Named | undefined): string {
  const told = new Set<string>();
  return sentence.replace(inSentence, (word) => {
    const found = word.startsWith("{") ? undefined : named(word);
    if (found === undefined) return word;
    if (told.has(found.name)) return found.label;
    told.add(found.name);
    return `${found.label} (${found.name})`;
  });
}

function namesOf(sheets: readonly SheetDeclaration[]): Map<string, Named> {
  const known = new Map<string, Named>();
  const add = (name: string, label: string): void => {
    if (label !== "" && !known.has(name)) known.set(name, { name, label });
  };
  for (const block of sheets.flatMap(({ blocks }) => blocks)) {
    const table = block.kind === "part" ? block.of : block;
    if (table.kind === "table") {
      add(table.name, table.heading);
      for (const [key, { kind, label }] of Object.entries(table.columns)) {
        if (kind === "input") add(`${table.name}.${key}`, label);
      }
    } else if (table.kind === "lines") {
      for (const [name, { kind, label }] of Object.entries(table.cells)) {
        if (kind === "input") add(name, label);
      }
    }
  }
  return known;
}
