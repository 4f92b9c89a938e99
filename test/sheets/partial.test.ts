import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fillBook } from "../../engine/book/fill.js";
import { valuesOf } from "../../engine/book/values.js";
import { calculate, calculateFast } from "../../engine/evaluate/calculate.js";
import { CellError, type Value } from "../../engine/formula/value.js";
import { rootErrors } from "../../engine/job/errors-in-cells.js";
import { inputPlanOf } from "../../engine/job/input-plan.js";
import type { JobRecord } from "../../engine/job/record.js";
import { valuesAsGiven } from "../../engine/job/values.js";
import type { Cell, Model } from "../../engine/template/model.js";
import { modelOf } from "../../engine/template/models.js";
import { templates } from "../../sheets/templates/index.js";
import { book } from "../support/changed-demo.js";
import { demoJobs } from "../support/demo.js";
import { Ripple } from "../support/ripple.js";

/** A job that is not complete shows no error value: what is not given yet counts for nothing. */

/** What a look-up finds rows by: without it the row is gone, and what names it finds nothing. */
const keys = new Set(["looks.name", "bubbler_looks.name", "taxes.class", "stones.name"]);

const faults = (of: Model, values: readonly Value[]) =>
  rootErrors(of, values).map(({ cell, code }) => `${cell.id} ${code}`);

function emptyJob(of: Model): Value[] {
  const values = [...valuesAsGiven(of, { inputs: {} } as JobRecord)];
  fillBook(of, values, book);
  return values;
}

const without = (values: readonly Value[], cells: readonly Cell[]): Value[] => {
  const less = [...values];
  for (const { index } of cells) less[index] = null;
  return less;
};

describe.each(templates)("$name", (template) => {
  const model = modelOf(template, "us");
  const inputs = inputPlanOf(model).inputs.map(({ cell }) => cell);
  const asked = inputs.filter(({ name }) => !keys.has(name));

  const ripple = new Ripple(model);

  const demos = demoJobs().flatMap((file) => {
    const job = JSON.parse(readFileSync(file, "utf8")) as JobRecord;
    return job.template === template.name
      ? [{ job: job.job, given: valuesOf(model, job, book) }]
      : [];
  });

  describe.each(["us", "si"] as const)("in %s", (system) => {
    const of = modelOf(template, system);

    test("nothing given but the template's defaults", () => {
      expect(faults(of, calculateFast(of, emptyJob(of)))).toEqual([]);
    });

    test("nothing at all, with an office book and without one", () => {
      const cells = inputPlanOf(of).inputs.map(({ cell }) => cell);
      const empty = without(emptyJob(of), cells);
      expect(faults(of, calculate(of, empty))).toEqual([]);
      const unpriced = without(valuesAsGiven(of, { inputs: {} } as JobRecord), cells);
      expect(faults(of, calculateFast(of, unpriced))).toEqual([]);
    });
  });

  const countGiven = (given: readonly Value[]) =>
    inputs.filter(({ index }) => given[index] !== null).length;
  const isLargest = (given: readonly Value[]) =>
    demos.every((one) => countGiven(one.given) <= countGiven(given));

  describe.each(demos)("$job", ({ given }) => {
    const inError = (values: readonly Value[], changed: ReadonlyMap<number, Value>) =>
      [...changed.keys()].filter((index) => values[index] instanceof CellError);

    test("typed in cell by cell, in the order in which they are asked for", () => {
      const values = calculateFast(model, emptyJob(model));
      const found: string[] = [];
      let typed = 0;
      for (const { id, index } of inputs) {
        const value = given[index] ?? null;
        if (value === (values[index] ?? null)) continue;
        typed += 1;
        const changed = ripple.set(values, index, value);
        if (inError(values, changed).length > 0) found.push(id);
      }
      expect(found).toEqual([]);
      expect(typed).toBeGreaterThan(20);
      // rows of the office book are copied by the codes that are given, so prices may differ
      expect(values[model.byId.get("total_design_flow")?.index as number]).toEqual(
        calculateFast(model, given)[model.byId.get("total_design_flow")?.index as number],
      );
    });

    const eachBlank = () => {
      const values = calculateFast(model, given);
      const found: string[] = [];
      for (const { id, index } of asked) {
        if (values[index] === null) continue;
        const changed = ripple.set(values, index, null);
        if (inError(values, changed).length > 0) found.push(id);
        ripple.undo(values, changed);
      }
      expect(found).toEqual([]);
    };
    // the others try a sample of theirs, below
    if (isLargest(given)) test("each input blank in turn", eachBlank);

    test("any of its inputs blank", () => {
      const share = fc.double({ min: 0.02, max: 0.98, noNaN: true });
      fc.assert(
        fc.property(
          share,
          fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
          (blank, draws) => {
            const cells = asked.filter(() => (draws.next().value as number) < blank);
            expect(faults(model, calculateFast(model, without(given, cells)))).toEqual([]);
          },
        ),
        { numRuns: Number(process.env.PARTIAL_RUNS ?? 8) },
      );
    });
  });

  test("a key that stands in no table stays an error", () => {
    const { given } = demos[0] as (typeof demos)[0];
    const values = [...given];
    values[model.byId.get("main_size")?.index as number] = "7 in";
    expect(faults(model, calculateFast(model, values))).toContain("main_bore #N/A");
  });
});
