import { expect, test } from "vitest";
import { valuesOf } from "../../../engine/book/values.js";
import { calculateFast, firstDifference } from "../../../engine/evaluate/calculate.js";
import { Cone, Reach } from "../../../engine/evaluate/cone.js";
import { judge } from "../../../engine/evaluate/judge.js";
import { ManyJudge } from "../../../engine/evaluate/judge-many.js";
import { Ripple, readersAmong } from "../../../engine/evaluate/ripple.js";
import { CellError, type Value } from "../../../engine/formula/value.js";
import { validateJob } from "../../../engine/job/validate.js";
import { modelOf } from "../../../engine/template/models.js";
import { unitSystems } from "../../../engine/units/quantity.js";
import { fence, fenceBook } from "../../support/fence.js";
import { randomJob } from "../../support/random-job.js";

const us = modelOf(fence, "us");

function given(seed: number, model = us): Value[] {
  const job = validateJob(model, randomJob(model, fenceBook, seed), `seed ${seed}`);
  return valuesOf(model, job, fenceBook);
}

test.each(unitSystems)(
  "500 random jobs agree in both evaluators on every cell to 1e-12, %s",
  (system) => {
    const model = modelOf(fence, system);
    const many = new ManyJudge(model, given(0, model));
    for (let seed = 0; seed < 500; seed++) {
      const values = given(seed, model);
      const cell = firstDifference(model, many.values(values), calculateFast(model, values), 1e-12);
      expect(cell?.id, `seed ${seed}`).toBeUndefined();
    }
    many.close();
  },
);

test("the judge of many jobs gives what a judge built for each gives", () => {
  const many = new ManyJudge(us, given(0));
  for (const seed of [3, 1, 2, 1]) {
    const values = given(seed);
    expect(many.values(values)).toEqual(judge(us, values));
  }
  many.close();
});

test("a difference in one cell is found and named", () => {
  const values = calculateFast(us, given(1));
  const wrong = values.slice();
  const at = us.byId.get("price")?.index as number;
  wrong[at] = (values[at] as number) * (1 + 1e-11);
  expect(firstDifference(us, values, wrong, 1e-12)?.id).toBe("price");
  expect(firstDifference(us, values, wrong, 1e-9)).toBeUndefined();
});

test("a cone gives the values of the whole, for fewer cells", () => {
  const cone = new Cone(us, ["worst_push"]);
  expect(cone.cells.length).toBeLessThan(us.order.length / 2);
  for (let seed = 0; seed < 20; seed++) {
    const whole = calculateFast(us, given(seed));
    const part = cone.calculate(given(seed));
    for (const { index } of cone.cells) expect(part[index]).toEqual(whole[index]);
  }
});

test("under changes, only what they reach is calculated, and the base comes back", () => {
  const margin = us.byId.get("margin")?.index as number;
  const base = calculateFast(us, given(2));
  const cone = new Cone(us, ["price"], new Set([margin]));
  expect(cone.cells.map(({ id }) => id)).toEqual(["price"]);
  const reach = new Reach(us, base, ["price"], cone);
  const at = us.byId.get("price")?.index as number;
  const [doubled] = reach.under([[margin, 0.5]]);
  expect(doubled).toBeCloseTo(((base[at] as number) * (1 - (base[margin] as number))) / 0.5, 9);
  expect(reach.under([])).toEqual([base[at]]);
});

test("a cone that goes from job to job gives what a new one gives for each, errors too", () => {
  const targets = us.order.map(({ id }) => id);
  const kept = new Cone(us, targets);
  const margin = us.byId.get("margin")?.index as number;
  const jobs = [1, 2, 2, 3, 1].map((seed) => given(seed));
  // a margin of all leaves nothing to divide by
  (jobs[1] as Value[])[margin] = 1;
  const errors = jobs.map((values) => {
    const found = kept.calculate(values);
    expect(found).toEqual(calculateFast(us, values));
    return found.filter((value) => value instanceof CellError).length;
  });
  expect(errors.map((count) => count > 0)).toEqual([false, true, false, false, false]);
});

test("a change calculates the formulas that read it, and goes no further where one comes to what it was", () => {
  const values = calculateFast(us, given(2));
  const { steps, ...readers } = readersAmong(us, us.order);
  const ran: number[] = [];
  const counted: typeof steps = {
    ...steps,
    run: (place, all) => {
      ran.push(steps.index[place] as number);
      return steps.run(place, all);
    },
  };
  const ripple = new Ripple({ ...readers, steps: counted }, values.slice(), true);
  ripple.settle();
  expect(ran).toEqual([]);
  const margin = us.byId.get("margin")?.index as number;
  ripple.set(margin, (values[margin] as number) + 0.01);
  ripple.settle();
  expect(ran).toContain(us.byId.get("price")?.index);
  expect(ran.length).toBeLessThan(us.order.length / 4);
});
