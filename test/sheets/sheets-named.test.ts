import { describe, expect, test } from "vitest";
import { modelOf } from "../../engine/template/models.js";
import { layoutOf } from "../../engine/template/office-layout.js";
import { templates } from "../../sheets/templates/index.js";

describe.each(templates)("$name", (template) => {
  const model = modelOf(template, "us");
  const fromBook = layoutOf(template)("us").map(({ sheet }) => sheet);
  const sheets = new Set([
    ...model.sheets.map(({ name }) => name),
    "Names",
    "Trail",
    "Summary",
    ...fromBook,
  ]);
  /** By name of an input, or of a table that holds inputs, the sheets where one can type it. */
  const typedOn = new Map<string, Set<string>>();
  const put = (name: string, sheet: string) =>
    typedOn.set(name, (typedOn.get(name) ?? new Set()).add(sheet));
  for (const { declaration, name, table, sheet } of model.cells) {
    if (declaration.kind !== "input") continue;
    put(name, sheet);
    if (table === undefined) put(declaration.label.toLowerCase(), sheet);
    else {
      put(table, sheet);
      put(name.slice(table.length + 1), sheet);
      put(declaration.label.toLowerCase(), sheet);
    }
  }

  /** All that a person is told: sentences of checks, notes of cells and tables. */
  const told: [where: string, text: string][] = model.placed.flatMap(({ block }) => {
    const cells =
      block.kind === "lines" ? block.cells : block.kind === "table" ? block.columns : {};
    const notes = block.kind === "table" && block.note !== undefined ? [block.note] : [];
    return [
      ...notes.map((note): [string, string] => [block.heading, note]),
      ...Object.entries(cells).flatMap(([name, cell]): [string, string][] => [
        ...(cell.note === undefined ? [] : [[name, cell.note] as [string, string]]),
        ...(cell.kind === "check" ? [[name, cell.sentence] as [string, string]] : []),
      ]),
    ];
  });

  const named = told.flatMap(([where, text]) =>
    [...text.matchAll(/\bsheets? ([A-Z][a-z]+(?: rules| tables)?)/g)].map((found) => ({
      where,
      sheet: found[1] as string,
      // what is to be typed stands in the same clause
      clause: text
        .slice(0, found.index)
        .split(/[.:;] |, but |, so /)
        .at(-1) as string,
    })),
  );

  /** Of `Additional tasks (additional_tasks)` the name: the words of a label are none. */
  const withoutLabels = (clause: string) =>
    clause.replace(/[A-Z][\w ,-]* \(([a-z_.]+)\)/g, "$1").replace(/\{[^}]*\}/g, "");

  /** Names written out as such: with an underscore, or of a table. A figure in braces is no name to type. */
  const namesIn = (clause: string): string[] =>
    (withoutLabels(clause).match(/[a-z]+(?:[_.][a-z]+)*/g) ?? []).filter(
      (word) => typedOn.has(word) && (/[_.]/.test(word) || model.tables.has(word)),
    );

  test("every sheet that a sentence sends to exists", () => {
    expect(named.length).toBeGreaterThan(60);
    expect(named.filter(({ sheet }) => !sheets.has(sheet))).toEqual([]);
  });

  test("an input that a sentence names stands on the sheet that it sends to", () => {
    const pairs = named.flatMap(({ where, sheet, clause }) =>
      namesIn(clause).map((name) => ({
        where,
        name,
        sheet,
        on: [...(typedOn.get(name) as Set<string>)],
      })),
    );
    expect(pairs.length).toBeGreaterThan(20);
    expect(pairs.filter(({ on, sheet }) => !on.includes(sheet))).toEqual([]);
  });

  test("a check sends to a sheet that asks, or to the office book; it may point at what is to be seen elsewhere", () => {
    const asking = ["Walk", "Decisions", "Office rules", "Built", "Pumps", "Prices", ...fromBook];
    const checks = new Set(model.checks.map((name) => name.split(".").at(-1)));
    const others = named.filter(
      ({ where, sheet, clause }) =>
        checks.has(where) && !asking.includes(sheet) && !/\bsee\b/.test(clause),
    );
    expect(others.map(({ where, sheet }) => `${where}: ${sheet}`)).toEqual([]);
  });
});
