import { expect, test } from "vitest";
import { compile } from "../../engine/template/compile.js";
import { glossary, neverSaid } from "../../sheets/glossary.js";
import { learning } from "../../sheets/learning/learning.js";
import { templates } from "../../sheets/templates/index.js";

const models = [...templates, learning(10)].map((template) => compile(template, "us"));
const cells = models.flatMap((model) => model.cells);

interface Said {
  readonly name: string;
  readonly label: string;
  readonly sentence: string;
}

const said: readonly Said[] = [
  ...new Map(
    cells.map(({ name, declaration }) => [
      `${name} ${declaration.label}`,
      {
        name,
        // the compiler's own cells add to a label
        label: declaration.label.replace(/: what to do$/, ""),
        sentence: declaration.kind === "check" ? declaration.sentence : "",
      },
    ]),
  ).values(),
];

const words = (text: string): number =>
  text
    .replace(/\{[^}]*\}/g, "x")
    // the name of a cell behind its label is for commands
    .replace(/ \([a-z_.]+\)/g, "")
    .split(/\s+/)
    .filter((word) => /[\p{L}\d]/u.test(word)).length;

const banned = [...neverSaid, ...glossary.flatMap(({ not }) => not)].map((word) => ({
  word,
  said: new RegExp(`\\b${word}\\b`, "i"),
}));
const saysBanned = (text: string): string[] =>
  banned.filter(({ said }) => said.test(text)).map(({ word }) => word);

/** Where a word that the glossary replaced has another sense, which is the usual one. */
const otherSense: readonly string[] = [
  // prices and rolls go by steps; a way has steps
  ...[
    "length_step: step",
    "rounding_step: step",
    "length_step_in_book: step",
    "rounding_step_in_book: step",
    "barrow_factor: step",
    // it says the labels of inputs
    "first_faults.said: step",
  ],
  ...["used_rates.code: step", "used_rates.means: step"],
  // a machine's reach; a hand's
  ...["machine_lift: reach", "lift_said: reach", "proposal_lines.says: reach"],
];

interface Text {
  readonly where: string;
  readonly text: string;
}

/** What stands on the sheets outside of cells, and in their fixed rows. */
function* blocksSay(): Generator<Text> {
  for (const { name, purpose, blocks } of models.flatMap(({ sheets }) => sheets)) {
    yield { where: name, text: `${name} ${purpose}` };
    for (const block of blocks) {
      yield { where: `heading on ${name}`, text: block.heading };
      if (block.kind === "text")
        yield* block.paragraphs.map((text) => ({ where: `text on ${name}`, text }));
      if (block.kind !== "table") continue;
      yield { where: block.name, text: block.note ?? "" };
      for (const row of block.data ?? []) {
        for (const [key, value] of Object.entries(row)) {
          if (typeof value === "string") yield { where: `${block.name}.${key}`, text: value };
        }
      }
    }
  }
}

/** Names, notes, choices; sentences without their figures, and the words that formulas say. */
function* cellsSay(): Generator<Text> {
  for (const { name, row = 1, declaration } of cells) {
    const where = name.replace(/_(status|message)$/, "");
    yield { where, text: where.replace(/[._]/g, " ") };
    yield { where, text: declaration.note ?? "" };
    if (declaration.kind === "input" && Array.isArray(declaration.choices)) {
      yield { where, text: declaration.choices.join("; ") };
    }
    if (declaration.kind !== "calc") continue;
    const { formula } = declaration;
    const text = typeof formula === "function" ? formula(row) : formula;
    if (text.startsWith("~")) yield { where, text: text.replace(/\{[^}]*\}/g, "x") };
    for (const [, quoted = ""] of text.matchAll(/"((?:[^"]|"")*)"/g)) yield { where, text: quoted };
  }
}

test("a label has at most five words", () => {
  expect(said.length).toBeGreaterThan(1000);
  expect(said.filter(({ label }) => words(label) > 5).map(({ label }) => label)).toEqual([]);
});

test("what a check says has at most 25 words, a figure counted as one", () => {
  expect(said.filter(({ sentence }) => words(sentence) > 25).map(({ name }) => name)).toEqual([]);
});

test("labels and checks use the words of the glossary, and none that it replaced", () => {
  const found = said.flatMap(({ name, label, sentence }) =>
    saysBanned(`${label} ${sentence}`).map((word) => `${name}: ${word}`),
  );
  expect(found.filter((one) => !otherSense.includes(one))).toEqual([]);
});

test("nor do headings, purposes, notes, choices, names, and what the pages say", () => {
  const found = [...blocksSay(), ...cellsSay()].flatMap(({ where, text }) =>
    saysBanned(text).map((word) => `${where}: ${word}`),
  );
  expect([...new Set(found)].filter((one) => !otherSense.includes(one))).toEqual([]);
});
