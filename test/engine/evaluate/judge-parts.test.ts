import { afterEach, describe, expect, test } from "vitest";
import { valuesOf } from "../../../engine/book/values.js";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import { stepsOf } from "../../../engine/evaluate/closures.js";
import { judge } from "../../../engine/evaluate/judge.js";
import { mustBear, questionsOf } from "../../../engine/evaluate/judge-parts.js";
import { judgedValues } from "../../../engine/evaluate/judge-sheets.js";
import { operations, runtime } from "../../../engine/evaluate/runtime.js";
import type { Operator } from "../../../engine/formula/tree.js";
import { CellError, type Value } from "../../../engine/formula/value.js";
import { validateJob } from "../../../engine/job/validate.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import type { Cell, Model } from "../../../engine/template/model.js";
import { modelOf } from "../../../engine/template/models.js";
import { fence, fenceBook } from "../../support/fence.js";
import { randomJob } from "../../support/random-job.js";
import { tiny } from "../../support/tiny.js";

const us = modelOf(fence, "us");

function given(seed: number): Value[] {
  const job = validateJob(us, randomJob(us, fenceBook, seed), `seed ${seed}`);
  return valuesOf(us, job, fenceBook);
}

/** Has hyperformula answer what these values of a job stand on. Throws where they do not hold. */
function hold(model: Model, values: readonly Value[]): void {
  const questions = questionsOf(model, values);
  mustBear(questions, judgedValues(questions.task()));
}

/** The values of a job, one formula cell of which comes to another value; what reads it goes on from there. */
function withFault(model: Model, inputs: readonly Value[], cell: Cell): Value[] {
  const values = inputs.slice();
  for (const step of stepsOf(model)) {
    step.run(values);
    if (step.index === cell.index) values[step.index] = another(values[step.index] as Value);
  }
  return values;
}

function another(value: Value): Value {
  if (typeof value === "number") return value + 1;
  return typeof value === "boolean" ? !value : `${value}x`;
}

test("what hyperformula comes to on whole sheets holds part by part, errors too", () => {
  const margin = us.byId.get("margin")?.index as number;
  for (let seed = 0; seed < 8; seed++) {
    const inputs = given(seed);
    if (seed % 4 === 3) inputs[margin] = 1;
    const judged = judge(us, inputs);
    expect(judged.some((value) => value instanceof CellError)).toBe(seed % 4 === 3);
    expect(() => hold(us, judged), `seed ${seed}`).not.toThrow();
  }
});

test("another value is found and named, in whatever cell", () => {
  const inputs = given(5);
  for (const cell of us.order.filter((_, i) => i % 9 === 0)) {
    expect(() => hold(us, withFault(us, inputs, cell)), cell.id).toThrow(
      `differ in ${cell.id} on sheet ${cell.sheet}`,
    );
  }
});

describe("a table of which two rows of four are in use", () => {
  const table = t.table(
    "cuts",
    "Cuts",
    { rows: 4, filled: "wide>0[ft]" },
    {
      wide: t.input(t.length, "Width"),
      long: t.input(t.length, "Length"),
      area: t.calc(t.area, "wide*long", "Area"),
      says: t.calc(t.text, 'IF(area>10[ft²],"large","small")', "Size"),
      rest: t.calc(t.length, "long-1[ft]", "Left over", { blank: "long*2" }),
    },
  );
  const cells = {
    all: t.calc(t.area, "SUM(cuts.area)+SUM(cuts.rest)*1[ft]", "All"),
    n: t.calc(t.number, 'SUMPRODUCT((cuts.says="large")*1)', ""),
  };
  const fresh = () => compile(tiny([table, t.lines("", cells)]), "us");
  const model = fresh();
  const rows: Record<string, Value[]> = { wide: [2, 4, null, null], long: [3, 5, null, null] };
  const inputs = model.cells.map(({ name, row, fixed }): Value => {
    if (fixed !== undefined) return fixed;
    return row === undefined ? null : (rows[name.split(".")[1] ?? ""]?.[row - 1] ?? null);
  });
  const cellNamed = (id: string) => model.byId.get(id) as Cell;
  const formulas = (values: readonly Value[]) =>
    questionsOf(model, values)
      .task()
      .sheets.Questions?.flatMap(([text]) => text ?? []) as string[];

  test("the condition of the others is asked once, and nothing within it", () => {
    const values = calculateFast(model, inputs);
    expect(() => hold(model, values)).not.toThrow();
    const empty = calculateFast(
      model,
      inputs.map((value) => (typeof value === "number" ? null : value)),
    );
    const asked = formulas(empty);
    expect(asked.filter((text) => /^=B\d+>0$/.test(text))).toHaveLength(1);
    // of no row a product, a length less a foot, or a size
    const ofRows = /^=B[\d:B]+\*C[\d:C]+$|^=B[\d:B]+-1$|>10$/;
    expect(asked.filter((text) => ofRows.test(text))).toEqual([]);
    expect(formulas(values).filter((text) => ofRows.test(text))).toHaveLength(3);
    expect(questionsOf(model, empty).count).toBeLessThan(questionsOf(model, values).count);
  });

  test("what differs in its values alone is one formula over all of them", () => {
    // the areas of both rows in use, 6 ft² and 20 ft²
    const questions = questionsOf(model, calculateFast(model, inputs));
    const rows = questions.task().sheets.Questions as unknown[][];
    const at = rows.findIndex(([text]) => /^=B\d+:B\d+\*C\d+:C\d+$/.test(String(text)));
    expect(rows.slice(at, at + 2).map((row) => row.slice(1))).toEqual([
      [2, 3],
      [4, 5],
    ]);
    expect(rows[at + 1]?.[0]).toBeNull();
    expect(judgedValues({ ...questions.task(), places: [0, at, 0, 0, at + 1, 0] })).toEqual([
      6, 20,
    ]);
  });

  test.each(["cuts.area[2]", "cuts.says[1]", "cuts.area[3]", "cuts.says[4]", "cuts.rest[3]", "n"])(
    "a fault in %s is found",
    (id) => {
      const values = withFault(model, inputs, cellNamed(id));
      expect(() => hold(model, values)).toThrow(`differ in ${id} on`);
    },
  );

  const kept = { ...operations };
  afterEach(() => void Object.assign(operations, kept));
  const faults: [Operator, keyof typeof runtime, (a: Value, b: Value) => Value][] = [
    // of the condition: takes rows for used that are not, and the other way round
    [">", "above", (a, b) => ((a ?? 0) as number) >= ((b ?? 0) as number)],
    [">", "above", () => false],
    ["*", "multiply", (a, b) => Number(a) * Number(b) + 1],
    ["=", "equal", () => false],
  ];
  test.each(faults)(
    "where all that is ours has %s wrong, hyperformula finds it",
    (sign, name, wrong) => {
      const right = runtime[name];
      try {
        Object.assign(runtime, { [name]: wrong });
        Object.assign(operations, { [sign]: wrong });
        const model = fresh();
        const values = calculateFast(model, inputs);
        expect(() => hold(model, values)).toThrow("evaluators differ");
      } finally {
        Object.assign(runtime, { [name]: right });
      }
    },
  );
});
