import { expect, test } from "vitest";
import type { Block, CellDeclaration } from "../../engine/template/index.js";
import { learning } from "../../sheets/learning/learning.js";
import { templates as ofTrade } from "../../sheets/templates/index.js";

const templates = [...ofTrade, learning(10)];

/** A formula that is longer lacks a name: a named formula, or a cell of its own. */
const most = 150;

interface Written {
  readonly where: string;
  readonly text: string;
}

/** Words in quotes are said and not calculated: they do not count where a formula is made to say something. */
const withoutWords = (text: string) => text.replace(/"(?:[^"]|"")*"/g, '""');

/** A formula, or of a sentence the formulas in its braces. */
const formulasIn = (text: string, sentence = text.startsWith("~")): string[] =>
  sentence
    ? [...text.matchAll(/\{([^}]*)\}/g)].map(([, inner = ""]) => withoutWords(inner))
    : [text];

function writtenIn(name: string, cell: CellDeclaration, rows: number): Written[] {
  if (cell.kind !== "calc" && cell.kind !== "check") return [];
  const { formula } = cell;
  const texts =
    typeof formula === "string"
      ? [formula]
      : Array.from({ length: rows }, (_, i) => formula(i + 1));
  const others = cell.kind === "calc" ? [cell.first, cell.blank] : [];
  const said = cell.kind === "check" ? formulasIn(cell.sentence, true) : [];
  return [...texts, ...others]
    .flatMap((text) => (text === undefined ? [] : formulasIn(text)))
    .concat(said)
    .map((text) => ({ where: name, text }));
}

function formulasOf(block: Block): Written[] {
  if (block.kind === "lines" || block.kind === "prose" || block.kind === "panel") {
    return Object.entries(block.cells).flatMap(([name, cell]) => writtenIn(name, cell, 1));
  }
  if (block.kind !== "table") return [];
  const { name: table, rows, filled } = block;
  const condition = filled === undefined ? [] : [{ where: `${table}, filled`, text: filled }];
  const columns = Object.entries(block.columns);
  return [
    ...condition,
    ...columns.flatMap(([name, cell]) => writtenIn(`${table}.${name}`, cell, rows)),
  ];
}

const tooLong = (all: readonly Written[]) =>
  all
    .filter(({ text }) => text.length > most)
    .map(({ where, text }) => `${where}: ${text.length} of ${text}`);

test("no formula of a cell is over 150 characters as it is declared", () => {
  const all = templates.flatMap(({ sheets }) =>
    sheets.flatMap(({ blocks }) => blocks.flatMap(formulasOf)),
  );
  expect(all.length).toBeGreaterThan(2000);
  expect(tooLong(all)).toEqual([]);
});

test("no named formula is over 150 characters", () => {
  const all = templates.flatMap(({ formulas }) =>
    formulas.map(({ name, text }) => ({ where: name, text: withoutWords(text) })),
  );
  expect(all.length).toBeGreaterThan(100);
  expect(tooLong(all)).toEqual([]);
});
