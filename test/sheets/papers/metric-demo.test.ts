import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { loadJob } from "../../../engine/book/load-job.js";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import { templates } from "../../../sheets/templates/index.js";
import { demoFolder } from "../../support/demo.js";

type Book = { readonly tables: Readonly<Record<string, readonly { readonly code?: string }[]>> };
const bookNamed = (name: string): Book => JSON.parse(readFileSync(join(demoFolder, name), "utf8"));

test.each(["items", "pumps", "rates"])(
  "the metric office book has the %s of the other one",
  (table) => {
    const codes = (name: string) =>
      (bookNamed(name).tables[table] ?? []).map(({ code }) => code).sort();
    expect(codes("office-book-metric.json")).toEqual(codes("office-book.json"));
  },
);

test("the metric demo stands; its centimeters and rod readings are in its heights", async () => {
  const { model, given } = await loadJob(join(demoFolder, "metric-terrace.json"), templates);
  const values = calculateFast(model, given);
  const shown = (id: string) => values[model.byId.get(id)?.index as number];
  const failing = model.cells.filter(
    ({ declaration, index }) =>
      declaration.kind === "check" && declaration.level === "must" && values[index] === false,
  );
  expect(failing.map(({ id }) => id)).toEqual([]);
  expect(shown("falls.width_counted[1]")).toBeCloseTo(0.9, 9);
  expect(shown("falls.width_counted[2]")).toBeCloseTo(1.1, 9);
  expect(shown("falls.drop_counted[1]")).toBeCloseTo(0.45, 9);
  expect(shown("falls.drop_counted[2]")).toBeCloseTo(0.55, 9);
  expect(shown("runs.fall_counted[1]")).toBeCloseTo(0.35, 9);
  // from the first lip to the rim by rod, and the rim over the water
  expect(shown("total_drop")).toBeCloseTo(2.1 - 0.6 + 0.35, 9);
});
