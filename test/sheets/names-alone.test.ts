import { expect, test } from "vitest";
import { valuesOf } from "../../engine/book/values.js";
import { calculateFast } from "../../engine/evaluate/calculate.js";
import { missingInputs } from "../../engine/job/missing.js";
import type { JobRecord } from "../../engine/job/record.js";
import type { InputDeclaration } from "../../engine/template/declare.js";
import type { Table } from "../../engine/template/model.js";
import {
  book,
  changedDemo,
  demo,
  failingIn,
  firstRow,
  model,
  shown,
} from "../support/changed-demo.js";

/** A row that has its name and nothing else: what a person types first, and may leave so. */

/** The demo with one row of a table, in which only this is typed. */
const typed = (table: string, row: Readonly<Record<string, unknown>>) => {
  const job = { ...demo, inputs: { ...demo.inputs, [table]: [row] } } as JobRecord;
  return calculateFast(model, valuesOf(model, job, book, "left blank"));
};

const firstOf = (table: Table) => Object.entries(table.block.columns)[0];

/** The tables whose rows a person begins by a name that no list offers. */
const named = [...model.tables.values()].flatMap((table) => {
  const [key = "", first] = firstOf(table) ?? [];
  if (first?.kind !== "input" || first.quantity.kind !== "text") return [];
  const { asked, choices } = first as InputDeclaration;
  const isOwn = table.block.data === undefined && choices === undefined;
  return isOwn && asked !== "office" && asked !== undefined
    ? [[table.block.name, key] as const]
    : [];
});

test("the tables that are looked at", () => {
  expect(named.map(([table]) => table)).toEqual(
    expect.arrayContaining([
      ...["options", "subcontracts", "risks", "additional_items", "additional_tasks"],
      ...["berms", "walls", "trees", "falls", "pools", "pots"],
    ]),
  );
});

test.each(named)(
  "a row of %s with its %s alone keeps the bid from standing, and is told",
  (table, key) => {
    const values = typed(table, { [key]: "Only a name" });
    const failing = [...failingIn(values)];
    const own = failing.filter((name) => name.startsWith(`${table}.`));
    const inputs = failing.filter((name) => name.startsWith("inputs_right"));
    expect([...own, ...inputs].length).toBeGreaterThan(0);
    const missing = missingInputs(model, values).filter((cell) => cell.table === table);
    // what is not missing is told by a check of the table, in the row
    if (missing.length === 0) expect(own).not.toEqual([]);
    expect(values[model.byId.get("bid_stands")?.index as number]).toBe(false);
  },
);

test.each([
  ["options", "other_cost", 500],
  ["options", "extra_hours", 3],
  ["additional_items", "waste", 0.1],
  ["subcontracts", "amount", 500],
  ["risks", "low", 500],
  ["additional_tasks", "hours", 4],
  ["walls", "cut_bank", true],
  ["berms", "top", 6],
])("a row of %s with its %s and no name is told by the cell of its name", (table, key, value) => {
  const values = typed(table, { [key]: value });
  const name = model.tables.get(table)?.columns.values().next().value?.cells[0];
  expect(missingInputs(model, values)).toContain(name);
  expect(failingIn(values)).toContain("inputs_right_decisions");
  // and on sheet Checks by table and row
  const [heading = ""] = model.tables.get(table)?.block.heading.split(",") ?? [];
  expect(values[model.byId.get("inputs_right_decisions_message")?.index as number]).toMatch(
    new RegExp(`^Sheet Decisions: ${heading}, row 1: .* needed\\. Correct the one with an arrow`),
  );
});

test("an input that breaks its rule is told by its label and name, or by its table and row", () => {
  const said = (changes: Readonly<Record<string, unknown>>, sheet: string) =>
    shown(changedDemo(changes), `inputs_right_${sheet}_message`);
  expect(said({ margin_wanted: 0.95 }, "decisions")).toBe(
    "Sheet Decisions: Profit margin wanted: ← 0% to 60%. Correct the one with an arrow beside it.",
  );
  expect(said(firstRow("pipe_lines", { override_flow: -1 }), "decisions")).toMatch(
    /^Sheet Decisions: Lines, row 1: .*Override flow .*\. Correct the one/,
  );
  expect(said({ seam_lap: 20 }, "office_rules")).toMatch(/^Sheet Office rules: Lap of a seam: ← /);
  // of a long table, the table alone
  expect(said({ tasks: [{ override_rate: -1 }] }, "labor")).toBe(
    "Sheet Labor: Tasks: an input is missing or breaks its rule. Correct the one with an arrow beside it.",
  );
  expect(said({}, "decisions")).toBe("ok");
});
