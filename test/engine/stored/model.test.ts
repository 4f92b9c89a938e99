import { expect, test } from "vitest";
import { loadJob } from "../../../engine/book/load-job.js";
import { calculateFast } from "../../../engine/evaluate/calculate-fast.js";
import { functionList } from "../../../engine/evaluate/closures.js";
import { judgeSheets } from "../../../engine/evaluate/judge-task.js";
import { links, readList } from "../../../engine/evaluate/links.js";
import { validateJob } from "../../../engine/job/validate.js";
import { type FunctionList, madeCodeOf } from "../../../engine/template/made-code.js";
import type { Cell, Condition, Model } from "../../../engine/template/model.js";
import { modelOf } from "../../../engine/template/models.js";
import { spokenFormula, xlsxFormula } from "../../../engine/template/printed.js";
import { unitSystems } from "../../../engine/units/quantity.js";
import { templates } from "../../../sheets/templates/index.js";
import { demoJobs } from "../../support/demo.js";
import { storedAgain } from "../../support/stored.js";
import { toy } from "../../support/toy.js";

/** As text, keys in order. Formulas by row are kept as what was made of them: a stored declaration says that it had one. */
const asText = (part: unknown): string =>
  JSON.stringify(part, (_, value) => {
    if (typeof value === "function") return "(a formula for each row)";
    if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
    return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
  });

/** Code with its letters as they are: what is kept has escapes for those beyond ASCII. */
const codeText = (list: FunctionList | undefined): string =>
  asText(list).replace(/\\\\u([0-9a-f]{4})/g, (_, code) =>
    String.fromCharCode(Number.parseInt(code, 16)),
  );

const known = new WeakMap<object, string>();
/** The rows of a column share their trees and what declares them. */
function textOf(part: object | undefined): string {
  if (part === undefined) return "none";
  const text = known.get(part) ?? asText(part);
  known.set(part, text);
  return text;
}

/** A cell with its trees, whatever way it holds them. */
const cellText = ({ declaration, ...own }: Cell, { spoken, native, inUse, says }: Cell): string => {
  const parts = [declaration, spoken, native, inUse, says].map(textOf);
  return [asText({ ...own, spoken: 0, native: 0, inUse: 0, says: 0 }), ...parts].join("\n");
};
const trees = (condition: Condition | undefined) =>
  condition && { spoken: condition.spoken, native: condition.native };
const tablesOf = ({ tables }: Model) =>
  [...tables.values()].map(({ filled, shown, columns, block, ...rest }) => ({
    ...rest,
    columns: [...columns.values()].map(({ cells, declaration: _, ...column }) => ({
      ...column,
      cells: cells.map(({ id }) => id),
    })),
    filled: trees(filled),
    shown: trees(shown),
  }));

/** What is kept knows no system by itself: a large template in one, a small one in both. */
const all = [
  ...unitSystems.map((system) => [toy.name, system, toy] as const),
  ...templates.map(
    (template, i) =>
      [template.name, unitSystems[i % unitSystems.length] ?? "us", template] as const,
  ),
];

test.each(all)(
  "the model of %s in %s comes back as the compiler makes it",
  (_, system, template) => {
    const fresh = modelOf(template, system);
    const stored = storedAgain(fresh);
    expect(stored.cells.length).toBe(fresh.cells.length);
    const differing = fresh.cells.filter((cell, i) => {
      const other = stored.cells[i] as Cell;
      return cellText(cell, cell) !== cellText(other, other);
    });
    expect(differing.map(({ id }) => id)).toEqual([]);
    expect(asText(tablesOf(stored))).toBe(asText(tablesOf(fresh)));
    expect(asText(stored.sheets)).toBe(asText(fresh.sheets));
    expect(asText(stored.placed)).toBe(asText(fresh.placed));
    expect(stored.order.map(({ id }) => id)).toEqual(fresh.order.map(({ id }) => id));
    expect([...stored.byId.keys()]).toEqual([...fresh.byId.keys()]);
    expect(asText([...stored.formulas])).toBe(asText([...fresh.formulas]));
    expect(stored.checks).toEqual(fresh.checks);
    expect(stored.template).toBe(fresh.template);
    expect(stored.system).toBe(fresh.system);
    expect(codeText(madeCodeOf(stored)?.functions())).toBe(codeText(functionList(fresh)));
    expect(asText(madeCodeOf(stored)?.reads())).toBe(asText(readList(fresh)));
    expect(asText(links(stored))).toBe(asText(links(fresh)));
  },
);

test("judge, closures and workbook are given the same by a stored model", async () => {
  const [file = ""] = demoJobs();
  const { model, given } = await loadJob(file, templates, undefined, "left blank");
  const stored = storedAgain(model);
  expect(asText(judgeSheets(stored, given)) === asText(judgeSheets(model, given))).toBe(true);
  expect(calculateFast(stored, given)).toEqual(calculateFast(model, given));
  const printed = (of: Model) =>
    of.order.map((cell) => `${xlsxFormula(of, cell)} ${spokenFormula(cell)}`).join("\n");
  expect(printed(stored) === printed(model)).toBe(true);
});

const wrong: [string, Record<string, unknown>][] = [
  ["an unknown name", { nothing_such: 1 }],
  ["a text for a number", { plot: "long" }],
  ["a number beyond its limit", { plot: 1e6 }],
  ["a choice that there is not", { finish: "shiny" }],
  ["no date", { begin: "soon" }],
];
test.each(wrong)("a stored model tells the same of %s in a record", (_, inputs) => {
  const fresh = modelOf(toy, "us");
  const record = {
    rillbook: 1,
    job: "a",
    template: toy.name,
    version: toy.version,
    units: "us",
    inputs,
  };
  const said = (model: Model) => {
    try {
      validateJob(model, record, "job.json");
      return "nothing";
    } catch (error) {
      return String(error);
    }
  };
  expect(said(storedAgain(fresh))).toBe(said(fresh));
  expect(said(fresh)).not.toBe("nothing");
});
