import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { loadJob } from "../../../engine/book/load-job.js";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import { templates } from "../../../sheets/templates/index.js";
import { demoFolder } from "../../support/demo.js";
import { pageCells } from "../../support/page-cells.js";

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

test.each(["metric-terrace.json", "hillside-stream.json"])(
  "%s: the packs of an order make up what is ordered",
  async (name) => {
    const { model, given } = await loadJob(join(demoFolder, name), templates);
    const values = calculateFast(model, given);
    const said = pageCells(model, "orders")
      .map(({ index }) => /^([\d.,]+) \S+ = (\d+) × ([\d.]+), at/.exec(String(values[index])))
      .flatMap((found) => (found === null ? [] : [found.slice(1).map((one) => Number(one))]));
    expect(said.length).toBeGreaterThan(3);
    expect(
      said.filter(([all = 0, packs = 0, pack = 0]) => Math.abs(packs * pack - all) > 0.01),
    ).toEqual([]);
  },
);

test("the metric pages name no depth that was turned over from inches for a child", async () => {
  const { model, given } = await loadJob(join(demoFolder, "metric-terrace.json"), templates);
  const values = calculateFast(model, given);
  const pages = (["proposal", "crew", "handOver"] as const).map((page) =>
    pageCells(model, page)
      .map(({ index }) => values[index])
      .join("\n"),
  );
  for (const said of pages) {
    expect(said).toMatch(/child can drown in 5 cm/);
    expect(said).not.toMatch(/\b51 mm/);
  }
});

test("the crew of the metric demo reads no small length that was turned over from inches", async () => {
  const { model, given } = await loadJob(join(demoFolder, "metric-terrace.json"), templates);
  const values = calculateFast(model, given);
  const said = pageCells(model, "crew")
    .map(({ index }) => values[index])
    .join("\n");
  // depths of stone and of topsoil, a trench, a lip: 4, 6 and 12 in
  for (const words of [
    "strip 100 mm",
    "dug 100 mm deeper",
    "lowest 100 mm bedding",
    "150 mm wide, 305 mm deep",
    "100 mm thick",
  ])
    expect(said).toContain(words);
  const finer = [...said.matchAll(/\b(\d+) mm\b/g)]
    .map(([, one]) => Number(one))
    .filter((one) => one >= 50 && one % 5 !== 0);
  expect(finer).toEqual([]);
});
