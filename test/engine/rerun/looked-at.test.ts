import { expect, test } from "vitest";
import { fillBook } from "../../../engine/book/fill.js";
import { calculateFast } from "../../../engine/evaluate/calculate-fast.js";
import { coneOf } from "../../../engine/evaluate/cone.js";
import { CellError, type Value } from "../../../engine/formula/value.js";
import { inputPlanOf } from "../../../engine/job/input-plan.js";
import { inputValues } from "../../../engine/job/values.js";
import { lookedAt } from "../../../engine/rerun/looked-at.js";
import { tradeOf } from "../../../engine/rerun/trade.js";
import { modelOf } from "../../../engine/template/models.js";
import { rolesOf } from "../../../engine/template/role-plan.js";
import { templates } from "../../../sheets/templates/index.js";
import { randomJob } from "../../support/random-job.js";

const book = await tradeOf(templates).readBook("sheets/demo/office-book.json");

/** What no person types, one input after the other: overflows, texts for figures, nothing. */
const unheard: readonly Value[] = [1e308, -1e308, 0, "#", null, ""];

const isError = (value: Value | undefined): boolean => value instanceof CellError;

function isAlike(one: Value | undefined, other: Value | undefined): boolean {
  if (!(one instanceof CellError) || !(other instanceof CellError)) return one === other;
  return one.code === other.code && one.origin === other.origin;
}

test.each(templates.filter(({ roles }) => roles !== undefined).map((one) => [one.name, one]))(
  "%s: what a rerun looks at has the values of a whole calculation, and all cells in error that keep a bid from standing",
  (_, template) => {
    const model = modelOf(template, "us");
    const told = coneOf(model, rolesOf(model).targets);
    const cone = lookedAt(model, []);
    expect(cone.cells.length).toBeLessThan(told.length);
    const { inputs } = inputPlanOf(model, book);
    const kinds = { sound: 0, faulty: 0 };
    for (let seed = 0; seed < 40; seed++) {
      const given = inputValues(model, randomJob(model, book, seed), book, "left blank");
      fillBook(model, given, book);
      // every other job stays as a person could have written it
      if (seed % 2 === 1) {
        const { index } = inputs[(seed * 97) % inputs.length]?.cell ?? { index: 0 };
        given[index] = unheard[seed % unheard.length] as Value;
      }
      const whole = calculateFast(model, given);
      const values = cone.calculate(given);
      const inError = told.filter(({ index }) => isError(whole[index]));
      expect(cone.cells.filter(({ index }) => isError(values[index]))).toEqual(inError);
      expect(cone.cells.filter(({ index }) => !isAlike(values[index], whole[index]))).toEqual([]);
      kinds[inError.length === 0 ? "sound" : "faulty"] += 1;
    }
    expect(kinds.sound).toBeGreaterThan(0);
    expect(kinds.faulty).toBeGreaterThan(0);
  },
);
