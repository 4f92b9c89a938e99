import fc from "fast-check";
import { expect, test } from "vitest";
import { calculateFast } from "../../../../engine/evaluate/calculate-fast.js";
import type { Value } from "../../../../engine/formula/value.js";
import type { Model } from "../../../../engine/template/model.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import type { Identity } from "../../../../engine/workbook/write/identity.js";
import { readBack } from "../../../../engine/workbook/write/read-back.js";
import { writeWorkbook } from "../../../../engine/workbook/write/write.js";
import { fenceGiven, fenceIdentity } from "../../../support/fence.js";
import { fenceModel, fenceTrail, fenceValues } from "../../../support/fence-bid.js";
import { pageModel, pageValues } from "../../../support/fence-page.js";

// an audit holds workbooks against what `readBack` says: it must be what the file says that is written

const identity = fenceIdentity(fenceModel);

async function mustBeAsWritten(model: Model, values: readonly Value[], of: Identity, look = true) {
  const bytes = await writeWorkbook(model, values, of, 0);
  expect(readBack(model, values, of, look)).toEqual(readWorkbook(bytes, { look }));
}

test.each<[string, Model, readonly Value[], Identity]>([
  ["a job with a trail", fenceModel, fenceValues, { ...identity, trail: fenceTrail }],
  ["a job with a page for the customer", pageModel, pageValues, fenceIdentity(pageModel)],
  ["a job of which nothing is known", fenceModel, fenceModel.cells.map(() => null), identity],
])("%s is told as its file reads, with its look and without", async (_, model, values, of) => {
  await mustBeAsWritten(model, values, of);
  await mustBeAsWritten(model, values, of, false);
});

/** What a file or its reader may change. */
const letter = fc.constantFrom(..."a &<>_x000D_\n\r\t\u007f\u0001\ufffe\ud83d\u00e9\u{1f600}");
const text = fc.string({ unit: letter, maxLength: 40 });
const number = fc.oneof(fc.constant(-0), fc.double({ min: -1e12, max: 1e12, noNaN: true }));

test("whatever is typed into a job", async () => {
  const inputs = fenceModel.cells.filter(({ declaration }) => declaration.kind === "input");
  const typed = fc.record({ texts: fc.array(text, { minLength: 5 }), numbers: fc.array(number) });
  await fc.assert(
    fc.asyncProperty(typed, async ({ texts, numbers }) => {
      const given = [...fenceGiven(fenceModel)];
      inputs.forEach(({ index, declaration }, i) => {
        const { kind } = declaration.quantity;
        if (kind === "text") given[index] = texts[i % texts.length] ?? null;
        else if (kind === "number") given[index] = numbers[i % numbers.length] ?? null;
      });
      await mustBeAsWritten(fenceModel, calculateFast(fenceModel, given), identity);
    }),
    { numRuns: 12 },
  );
});
