import { expect, test } from "vitest";
import { walk } from "../../../engine/formula/tree.js";
import { modelOf } from "../../../engine/template/models.js";
import { fence } from "../../support/fence.js";

const fenceModel = modelOf(fence, "us");

test("every node of every formula is frozen", () => {
  const trees = fenceModel.cells.flatMap(({ spoken, native, inUse }) =>
    [spoken, native, inUse].filter((tree) => tree !== undefined),
  );
  const nodes = trees.flatMap((tree) => [...walk(tree)]);
  const loose = nodes.filter(
    (node) => !Object.isFrozen(node) || (node.kind === "call" && !Object.isFrozen(node.args)),
  );
  expect(nodes.length).toBeGreaterThan(100);
  expect(loose).toEqual([]);
});

test("a table carries the condition that a row is in use, its cells what holds there", () => {
  const tables = [...fenceModel.tables.values()].filter(({ block }) => block.filled !== undefined);
  expect(tables.length).toBeGreaterThan(0);
  for (const { filled, columns } of tables) {
    const cells = [...columns.values()].flatMap((column) => column.cells);
    const formulas = cells.filter(({ spoken }) => spoken !== undefined);
    expect(formulas.length).toBeGreaterThan(0);
    for (const { spoken, inUse } of formulas) {
      expect(spoken).toMatchObject({ kind: "call", name: "IF", args: [filled?.spoken, inUse, {}] });
    }
  }
});

test("a table whose rows are all in use carries no condition", () => {
  const whole = [...fenceModel.tables.values()].filter(({ block }) => block.filled === undefined);
  expect(whole.length).toBeGreaterThan(0);
  expect(whole.filter(({ filled }) => filled !== undefined)).toEqual([]);
});
