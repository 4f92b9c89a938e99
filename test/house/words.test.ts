import { expect, test } from "vitest";
import { compile } from "../../engine/template/compile.js";
import { glossary, neverSaid } from "../../sheets/glossary.js";
import { waterfall } from "../../sheets/templates/waterfall.js";

const model = compile(waterfall, "us");

interface Said {
  readonly name: string;
  readonly label: string;
  readonly sentence: string;
}

const said: readonly Said[] = [
  ...new Map(
    model.cells.map(({ name, declaration }) => [
      name,
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
    .split(/\s+/)
    .filter((word) => /[\p{L}\d]/u.test(word)).length;

const banned = [...neverSaid, ...glossary.flatMap(({ not }) => not)];
const saysBanned = (text: string): string[] =>
  banned.filter((word) => new RegExp(`\\b${word}\\b`, "i").test(text));

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
  // prices and rolls go by steps too: another sense of the word, and the usual one
  expect(found.filter((one) => !/^(length|rounding)_step: step$/.test(one))).toEqual([]);
});
