import fc from "fast-check";
import { expect, test } from "vitest";
import { fenceParts, roundTrip, someTexts } from "../../support/text-round-trip.js";

test("30 jobs of strange texts", { timeout: 120_000 }, async () => {
  const count = { refused: 0, kept: 0 };
  const property = fc.asyncProperty(someTexts, async (one) => {
    count[await roundTrip(one)] += 1;
  });
  await fc.assert(property, { numRuns: 30, seed: 14 });
  expect(count.kept).toBeGreaterThan(8);
  expect(count.refused).toBeGreaterThan(4);
});

test.each(["a_x000D_b", "_x005F_", "_x0041_x0042_", "one\r\ntwo", " \t x ", "a\u2028b", "'=1"])(
  "%j everywhere",
  async (one) => {
    const { job, by } = fenceParts();
    const rest = { job, by, about: one, customer: one, label: one, supplier: one, note: one };
    expect(await roundTrip(rest)).toBe("kept");
  },
);
