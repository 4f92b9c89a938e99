import fc from "fast-check";
import { expect, test } from "vitest";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import { narrowed, readersFrom } from "../../../engine/evaluate/narrowed.js";
import { residues } from "../../../engine/evaluate/partial.js";
import { Ripple } from "../../../engine/evaluate/ripple.js";
import { CellError, type Value } from "../../../engine/formula/value.js";
import * as t from "../../../engine/template/index.js";
import type { Model } from "../../../engine/template/model.js";
import { givenFor, modelOf } from "./formula-cases.js";
import { anyNumber, anyText, anyYesno } from "./random-formulas.js";

/** Values that move, and to what. */
const moves: Readonly<Record<string, readonly Value[]>> = {
  n_a: [3, 0, -7.25, null, 1e200],
  n_b: [0, 2, 11.5, null],
  s_a: ["", "elm", "Oak tree"],
  "rows.x[1]": [0, 5, null],
  "rows.name[2]": ["ash", null],
};

/** What a ripple through what is left gives, after each change, against a calculation of everything. */
function mustGiveTheSame(model: Model, moving: readonly string[], seed: number): number {
  const given = givenFor(model);
  const base = calculateFast(model, given);
  const index = (id: string) => model.byId.get(id)?.index as number;
  const targets = model.order.map(({ id }) => id);
  const left = narrowed(model, targets, new Set(moving.map(index)), base);
  const ripple = new Ripple(readersFrom(structuredClone(left)), base.slice(), true);
  for (let round = 0; round < 6; round++) {
    const changed = given.slice();
    moving.forEach((id, i) => {
      const values = moves[id] as readonly Value[];
      const value = values[(seed + round * (i + 1)) % values.length] as Value;
      changed[index(id)] = value;
      ripple.set(index(id), value);
    });
    ripple.settle();
    const whole = calculateFast(model, changed);
    for (const cell of model.order) {
      const found = ripple.values[cell.index];
      expect(found, `${cell.id} in round ${round}`).toEqual(whole[cell.index]);
    }
  }
  return left.steps.places.length;
}

const kinds: [string, fc.Arbitrary<string>, t.Quantity, number][] = [
  ["numbers", anyNumber, t.number, 300],
  ["texts", anyText, t.text, 200],
  ["conditions", anyYesno, t.yesno, 200],
];

test.each(kinds)(
  "what is left of random formulas gives what the whole of them gives: %s",
  (_, formulas, quantity, runs) => {
    const texts = fc.sample(formulas, { numRuns: runs, seed: 4711 });
    const cells = Object.fromEntries(
      texts.map((text, i) => [`f_${i}`, t.calc(quantity, text, "")]),
    );
    const model = modelOf(cells);
    for (const moving of [["n_a"], ["n_b", "s_a"], ["rows.x[1]", "rows.name[2]"]]) {
      const steps = mustGiveTheSame(model, moving, runs);
      expect(steps).toBeGreaterThan(3);
      expect(steps).toBeLessThan(model.order.length);
    }
  },
);

const leftCases: [formula: string, quantity: t.Quantity][] = [
  ["n_b+1", t.number],
  ["IF(n_b>0,n_a,2)", t.number],
  ["IF(n_b<0,1,n_a)", t.number],
  ["CHOOSE(2,n_b,n_a)", t.number],
  ["INDEX(rows.y,2)", t.number],
  ["IF(AND(n_b<>0,n_a>0),1,2)", t.number],
];

test("known branches, places and conditions are gone", () => {
  const cells = Object.fromEntries(
    leftCases.map(([text, quantity], i) => [`f_${i}`, t.calc(quantity, text, "")]),
  );
  const model = modelOf(cells);
  const given = givenFor(model);
  given[model.byId.get("n_b")?.index as number] = -3;
  const moving = new Set([model.byId.get("n_a")?.index as number]);
  const left = residues(model, model.order, moving, calculateFast(model, given));
  const of = (i: number) => left.find(({ cell }) => cell.id === `f_${i}`)?.tree;
  expect([0, 1, 2, 3, 4].map(of)).toEqual([
    undefined,
    undefined,
    undefined,
    { kind: "scalar", name: "n_a" },
    undefined,
  ]);
  // of both conditions the one that moves
  expect(JSON.stringify(of(5))).not.toContain("n_b");
  expect(JSON.stringify(of(5))).toContain("n_a");
});

test("an error that stands still, or comes and goes, is the one of the whole", () => {
  const model = modelOf({
    still: t.calc(t.number, "n_a+n_bad", ""),
    goes: t.calc(t.number, "n_b/n_a", ""),
    after: t.calc(t.number, "goes*2", ""),
    passed: t.calc(t.number, "IF(ISERROR(goes),1,goes)", ""),
  });
  mustGiveTheSame(model, ["n_a"], 0);
  const values = calculateFast(model, givenFor(model));
  expect(values[model.byId.get("still")?.index as number]).toBeInstanceOf(CellError);
});
