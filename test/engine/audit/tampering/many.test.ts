import { expect, test } from "vitest";
import { manyCases } from "./cases/many.js";
import { auditOf, holds, newBook } from "./run.js";

test.each(manyCases)("$verdict: $what", holds);

test.each(manyCases)("$what: one finding of that kind, or one each of a few", async (one) => {
  const book = newBook();
  one.edit(book);
  const { findings } = await auditOf(book.bytes());
  const alike = findings.filter(
    ({ code, grade }) => code === one.finds?.code && grade !== "to know",
  );
  expect(alike.length).toBeLessThanOrEqual(3);
});
