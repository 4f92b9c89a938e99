import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { digestOf, markOf } from "../../../engine/stored/mark.js";
import * as t from "../../../engine/template/index.js";
import { templates } from "../../../sheets/templates/index.js";
import { inFolder } from "../../support/stored.js";
import { toy } from "../../support/toy.js";

const cells = { x: t.input(t.number, "X", { default: 1 }), y: t.calc(t.number, "x+1", "Y") };
const byRow = (text: (row: number) => string, rows = 3) =>
  t.table("list", "List", { rows }, { a: t.calc(t.number, text, "A") });
const columns = { a: t.calc(t.number, (row) => (row > 3 ? "1" : "2"), "A") };
const otherColumns = { a: t.calc(t.number, (row) => (row > 3 ? "5" : "2"), "A") };

const made = (blocks: t.Block[], more: Partial<t.Template> = {}) =>
  t.template({
    name: "small",
    version: 1,
    title: "Small",
    sheets: [t.sheet("One", "The sheet.", blocks)],
    formulas: [],
    headline: [],
    ...more,
  });
const named = (text: string) =>
  t.formula("TWICE", "Twice", { of: t.number }, t.number, text, "invented for the tests");

const pairs: [string, t.Template, t.Template][] = [
  [
    "a label",
    made([t.lines("L", cells)]),
    made([t.lines("L", { ...cells, y: t.calc(t.number, "x+1", "Z") })]),
  ],
  [
    "a formula",
    made([t.lines("L", cells)]),
    made([t.lines("L", { ...cells, y: t.calc(t.number, "x+2", "Y") })]),
  ],
  ["a version", made([]), made([], { version: 2 })],
  [
    "a named formula",
    made([], { formulas: [named("of*2")] }),
    made([], { formulas: [named("of+of")] }),
  ],
  ["the count of rows", made([byRow(() => "1", 3)]), made([byRow(() => "1", 4)])],
  [
    "a formula in its last row alone",
    made([byRow((row) => `${row}`)]),
    made([byRow((row) => (row === 3 ? "4" : `${row}`))]),
  ],
  [
    "the same columns in a shorter and a longer table, in a row that only the longer has",
    made([t.table("a", "A", { rows: 2 }, columns), t.table("b", "B", { rows: 5 }, columns)]),
    made([
      t.table("a", "A", { rows: 2 }, otherColumns),
      t.table("b", "B", { rows: 5 }, otherColumns),
    ]),
  ],
  [
    "the order of cells",
    made([t.lines("L", { x: cells.x, y: cells.y })]),
    made([t.lines("L", { y: cells.y, x: cells.x })]),
  ],
];

test.each(pairs)("another template has another mark: %s", (_, one, other) => {
  expect(markOf(one, "us")).not.toBe(markOf(other, "us"));
});

test("the same template has the same mark, and another one in the other system", () => {
  expect(markOf(toy, "us")).toBe(markOf({ ...toy }, "us"));
  expect(markOf(toy, "us")).not.toBe(markOf(toy, "si"));
});

test("every template of the program can be kept", () => {
  for (const template of templates) expect(markOf(template, "us")).toMatch(/^[0-9a-f]{64}$/);
});

test("a template that holds a function nobody knows how to ask has no mark", () => {
  const odd = { ...toy, sheets: [{ ...t.sheet("A", "B.", []), odd: () => 1 }] };
  expect(markOf(odd as t.Template, "us")).toBeUndefined();
});

test("an edit, a new file and a name of the engine's code each change its digest", () => {
  inFolder((folder) => {
    mkdirSync(join(folder, "room", "deep"), { recursive: true });
    const write = (name: string, text: string) => {
      writeFileSync(join(folder, "room", name), text);
      return digestOf(folder, ["room"]);
    };
    const found = [
      write("a.js", "1"),
      write("a.js", "2"),
      write("deep/b.js", "2"),
      write("deep/b.ts", "2"),
    ];
    expect(new Set(found).size).toBe(4);
    expect(write("notes.md", "no code")).toBe(found[3]);
    expect(write("a.d.ts", "no code either")).toBe(found[3]);
  });
});
