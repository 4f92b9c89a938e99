import { expect, test } from "vitest";
import { calculateFast } from "../../../engine/evaluate/calculate-fast.js";
import { mustBeJudged } from "../../../engine/evaluate/kept-judge.js";
import type { Value } from "../../../engine/formula/value.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { tiny } from "../../support/tiny.js";

// large enough to be asked by questions first, and by sheets that stay built after that

const model = compile(
  tiny([
    t.table(
      "steps",
      "Steps",
      { rows: 450 },
      {
        given: t.input(t.number, "Given", { optional: true }),
        twice: t.calc(t.number, "given*2", "Twice"),
        more: t.calc(t.number, "twice+1", "More"),
        least: t.calc(t.number, "MIN(more,7)", "Least"),
        third: t.calc(t.number, "least/3", "Third"),
      },
    ),
    t.lines("Sums", { all_thirds: t.calc(t.number, "SUM(steps.third)", "Sum") }),
  ]),
  "us",
);

const given = (seed: number): Value[] =>
  model.cells.map(({ id, row = 0 }) => (id.startsWith("steps.given") ? (row * seed) % 11 : null));

test("each job is held against the judge, however many of the model came before", () => {
  expect(model.order.length).toBeGreaterThan(2000);
  const wrong = ["steps.more[3]", "steps.least[450]", "all_thirds"];
  for (let seed = 1; seed <= 3; seed++) {
    const values = calculateFast(model, given(seed));
    expect(() => mustBeJudged(model, given(seed), values)).not.toThrow();
    const id = wrong[seed % wrong.length] as string;
    const index = model.byId.get(id)?.index as number;
    const off = values.map((value, i) => (i === index ? (value as number) + 0.25 : value));
    expect(() => mustBeJudged(model, given(seed), off)).toThrow(`differ in ${id}`);
  }
});
