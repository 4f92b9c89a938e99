import fc from "fast-check";
import { test } from "vitest";
import { calculateFast } from "../../../../engine/evaluate/calculate-fast.js";
import type { Value } from "../../../../engine/formula/value.js";
import type { Model } from "../../../../engine/template/model.js";
import type { Identity } from "../../../../engine/workbook/write/identity.js";
import { fenceGiven, fenceIdentity } from "../../../support/fence.js";
import { fenceModel, fenceTrail, fenceValues } from "../../../support/fence-bid.js";
import { pageModel, pageValues } from "../../../support/fence-page.js";
import { mustBeAsExceljs } from "../../../support/through-exceljs.js";

const identity = fenceIdentity(fenceModel);

test.each<[string, Model, readonly Value[], Identity]>([
  ["a job with a trail", fenceModel, fenceValues, { ...identity, trail: fenceTrail }],
  ["a job without one", fenceModel, fenceValues, identity],
  ["a job with a page for the customer", pageModel, pageValues, fenceIdentity(pageModel)],
  ["a job of which nothing is known", fenceModel, fenceModel.cells.map(() => null), identity],
])("%s is spelled part by part as exceljs does", async (_, model, values, of) => {
  await mustBeAsExceljs(model, values, of);
});

/** Letters that XML, the format of texts, or a formula could stumble over. */
const letter = fc.constantFrom(..."aZ 9&<>\"'=+-_x000D_\n\t\u007f\u0001\ufffe\u00e9\u{1f600}é");
const text = fc.string({ unit: letter, maxLength: 40 });
const number = fc.oneof(
  fc.integer({ min: -1e6, max: 1e6 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

test("whatever is typed into a job", async () => {
  const inputs = fenceModel.cells.filter(({ declaration }) => declaration.kind === "input");
  const typed = fc.record({ texts: fc.array(text, { minLength: 5 }), numbers: fc.array(number) });
  await fc.assert(
    fc.asyncProperty(typed, text, async ({ texts, numbers }, job) => {
      const given = [...fenceGiven(fenceModel)];
      inputs.forEach(({ index, declaration }, i) => {
        const { kind } = declaration.quantity;
        if (kind === "text") given[index] = texts[i % texts.length] ?? null;
        else if (kind === "number") given[index] = numbers[i % numbers.length] ?? null;
      });
      await mustBeAsExceljs(fenceModel, calculateFast(fenceModel, given), { ...identity, job });
    }),
    { numRuns: 12 },
  );
});
