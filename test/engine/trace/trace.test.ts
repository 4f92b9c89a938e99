import { describe, expect, test } from "vitest";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { shown } from "../../../engine/job/shown-value.js";
import type { Cell } from "../../../engine/template/model.js";
import { modelOf } from "../../../engine/template/models.js";
import type { TraceNode } from "../../../engine/trace/node.js";
import { styleOf } from "../../../engine/trace/number-style.js";
import { traceText } from "../../../engine/trace/text.js";
import { trace, traceColumn } from "../../../engine/trace/trace.js";
import { bodiesOf, evaluatePrinted } from "../../support/evaluate-printed.js";
import { fence, fenceGiven } from "../../support/fence.js";

const model = modelOf(fence, "us");
const values = calculate(model, fenceGiven(model));
const origins = {
  input: () => ({ kind: "untold", text: "as given" }) as const,
  book: "invented prices, as of 2026-03-01",
};
const job = { model, values, origins };
const cell = (id: string) => model.byId.get(id) as Cell;

function* nodes(node: TraceNode): Generator<TraceNode> {
  yield node;
  for (const part of node.parts) yield* nodes(part);
}

/** A figure to the decimals of another that has been printed. */
function asShown(value: unknown, printed: string): string {
  const figure = printed.split(" ")[0] as string;
  const decimals = figure.split(".")[1]?.length ?? 0;
  return (value as number).toLocaleString("en-US", {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
}

describe("the numbers printed at each level give the result printed", () => {
  test.each(model.cells.filter((one) => one.spoken !== undefined).map(({ id }) => id))(
    "%s",
    (id) => {
      let checked = 0;
      for (const node of nodes(trace(job, cell(id), 20))) {
        if (node.numbers === undefined) continue;
        const found = evaluatePrinted(node.numbers, bodiesOf(model));
        const home = model.byId.get(node.name);
        if (home !== undefined) expect(shown(model, home, found)).toBe(node.shown);
        else expect(asShown(found, node.shown)).toBe(node.shown.split(" ")[0]);
        checked += 1;
      }
      expect(checked).toBeGreaterThan(0);
    },
  );
});

test("a figure shows its formula in names, in numbers with units, and its parts", () => {
  const node = trace(job, cell("price"), 1);
  expect(node).toMatchObject({
    formula: "(materials+labor)/(1-margin)",
    numbers: "(1569.612 [$]+1700 [$])/(1-20%)",
    shown: "$4,087.02",
    unit: "$",
  });
  expect(node.parts.map(({ name, state }) => [name, state])).toEqual([
    ["materials", "closed"],
    ["labor", "closed"],
    ["margin", "leaf"],
  ]);
});

test("numbers are rounded as the workbook shows them where that gives the result", () => {
  expect(trace(job, cell("labor"), 1).numbers).toBe(
    "16*75 [$]+IF(3127 [lb]>2000 [lb],500 [$],0 [$])",
  );
});

test("a named formula shows by name first, and opens a level deeper", () => {
  const closed = trace(job, cell("runs.push[1]"), 1).parts[0];
  expect(closed).toMatchObject({ kind: "formula", name: "WIND_FORCE(face,wind)", state: "closed" });
  const opened = trace(job, cell("runs.push[1]"), 3).parts[0];
  expect(opened).toMatchObject({ formula: "WIND_PRESSURE(wind)*face", shown: "3,127 lb" });
  expect(opened?.parts[0]).toMatchObject({
    formula: "0.00256*(wind*0.681818)^2",
    numbers: "0.00256*(88 [ft/s]*0.681818)^2",
    shown: "9.21600 lb/ft²",
  });
});

test("of a column that is looked up, the row found is shown; of one that is summed, the rows in use", () => {
  expect(trace(job, cell("spacing"), 1).parts.map(({ name }) => name)).toEqual([
    "soils.spacing[3]",
    "soil",
    "soils.soil",
  ]);
  const column = trace(job, cell("total_run"), 2).parts[0];
  expect(column?.rows?.map(({ row }) => row)).toEqual([1, 2, 3]);
  expect(column?.shown).toBe("3 of 5 rows in use");
});

test("leaves tell their origin: trail, published source, supplier and date", () => {
  const text = traceText(trace(job, cell("price"), 20), 200);
  expect(text).toContain("from: as given");
  expect(text).toContain("published: made up for the test");
  expect(text).toContain("code post, supplier Supplier A, good");
});

test("a figure is opened once", () => {
  const all = [...nodes(trace(job, cell("price"), 20))].filter(({ name }) => name === "spacing");
  expect(all.length).toBeGreaterThan(1);
  expect(all.filter(({ state }) => state === "opened")).toHaveLength(1);
});

test("a row that is not in use shows its condition", () => {
  expect(trace(job, cell("runs.posts[5]"), 1)).toMatchObject({
    formula: "IF(run>0,POST_COUNT(run,spacing),0)",
    numbers: "IF(blank>0,POST_COUNT(blank,9.5 [ft]),0)",
    shown: "0",
  });
});

test("a column is traced row by row", () => {
  const node = traceColumn(job, "runs", "posts", 1);
  expect(node.parts.map(({ name }) => name)).toEqual([
    "runs.posts[1]",
    "runs.posts[2]",
    "runs.posts[3]",
  ]);
});

test("an error is shown with the cell it came from", () => {
  const broken = [...values];
  const given = cell("margin");
  broken[given.index] = 1;
  const again = calculate(model, broken);
  const node = trace({ ...job, values: again }, cell("price"), 1);
  expect(node.shown).toBe("#DIV/0!");
  expect(node.numbers).toBe("(1569.61 [$]+1700 [$])/(1-100%)");
});

test("no line is wider than asked, and the last digits do not turn", () => {
  const text = traceText(trace(job, cell("price"), 20), 72);
  expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(72);
  expect(styleOf(cell("price"), "us").decimals).toBe(2);
});
