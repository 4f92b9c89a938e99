import { expect, test } from "vitest";
import type { OpenedJob } from "../../../engine/audit/open.js";
import { valuesOf } from "../../../engine/book/values.js";
import { changeOrderOf } from "../../../engine/compare/change-order.js";
import { type Comparison, compareJobs } from "../../../engine/compare/compare.js";
import { comparisonJson } from "../../../engine/compare/json.js";
import { changeOrderMarkdown, comparisonMarkdown } from "../../../engine/compare/text.js";
import { comparisonWorkbook } from "../../../engine/compare/workbook.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { JobRecord } from "../../../engine/job/record.js";
import { appended } from "../../../engine/job/trail/chain.js";
import { modelOf } from "../../../engine/template/models.js";
import type { Roles } from "../../../engine/template/template.js";
import { template } from "../../../engine/template/template.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { fence, fenceBook, fenceJob } from "../../support/fence.js";
import { fenceTrail } from "../../support/fence-bid.js";

const roles: Roles = {
  price: "price",
  cost: "materials",
  sections: [
    { label: "Material", name: "materials" },
    { label: "Labor", name: "labor" },
  ],
  told: ["runs", "height"],
};
const priced = template({ ...fence, roles });
const model = modelOf(priced, "us");

function opened(job: JobRecord, book = fenceBook, of = model): OpenedJob {
  return {
    files: [],
    source: "record",
    job: job.job,
    model: of,
    values: calculate(of, valuesOf(of, job, book)),
    trail: job.trail ?? [],
    book: `${book.name}, as of ${book.asOf}`,
  };
}

const runs = fenceJob.inputs.runs as Record<string, number | string>[];
const taller: JobRecord = {
  ...fenceJob,
  inputs: {
    ...fenceJob.inputs,
    height: 6,
    margin: 0.25,
    runs: [{ ...runs[0] }, { ...runs[1], run: 40 }, runs[2] as Record<string, number | string>],
  },
  trail: appended(fenceTrail, [
    {
      time: "2026-06-01T08:00:00.000Z",
      by: "Estimator B",
      input: "height",
      old: 5.5,
      new: 6,
      unit: "ft",
      from: "drawing",
      note: "the customer wants it higher",
    },
  ]),
};
const before = opened({ ...fenceJob, trail: fenceTrail });
const after = opened(taller);
const comparison = compareJobs(before, after);

const officeText = (one: Comparison) => comparisonMarkdown(one, changeOrderOf(one));
const workbook = (one: Comparison, audience: "customer" | "office") =>
  comparisonWorkbook(one, audience, changeOrderOf(one));

test("inputs that changed, by whom and why", () => {
  expect(
    comparison.inputs.map(({ id, oldShown, newShown, reason }) => [
      ...[id, oldShown, newShown, reason.from, reason.by, reason.note],
    ]),
  ).toEqual([
    ["height", "5.50 ft", "6.00 ft", "drawing", "Estimator B", "the customer wants it higher"],
    ["runs.run[2]", "33.25 ft", "40.00 ft", "not in the trail", undefined, undefined],
    ["margin", "20.0%", "25.0%", "not in the trail", undefined, undefined],
  ]);
});

test.each([
  ["$/ft", "$1,788/ft", "$1,335/ft", 1788, 1335, "-$453/ft"],
  ["$/h", "$40.00/h", "$41.50/h", 40, 41.5, "+$1.50/h"],
  ["ft", "6.00 ft", "7.25 ft", 6, 7.25, "+1.25 ft"],
])("a difference in %s is told as people write it", (unit, oldShown, newShown, old, now, told) => {
  const [one] = comparison.headline;
  if (one === undefined) throw new Error("The fence has no headline.");
  const changed = { ...one, unit, oldShown, newShown, old, new: now };
  expect(officeText({ ...comparison, headline: [changed] })).toContain(
    `| ${oldShown} | ${newShown} | ${told} |`,
  );
});

test("quantities, sections and price follow", () => {
  const figure = (id: string) => comparison.figures.find((one) => one.id === id);
  expect(figure("total_run")).toMatchObject({ oldShown: "106.95 ft", newShown: "113.70 ft" });
  // by hand: the second run is 6.75 ft longer
  expect((figure("total_run")?.new as number) - (figure("total_run")?.old as number)).toBeCloseTo(
    6.75,
    9,
  );
  expect(comparison.sections.map(({ label }) => label)).toEqual(["Material", "Labor"]);
  const [old, now] = comparison.sections.reduce(
    ([x, y], one) => [x + (one.old as number), y + (one.new as number)],
    [0, 0],
  );
  expect(comparison.price?.old).toBeCloseTo((old as number) / 0.8, 9);
  expect(comparison.price?.new).toBeCloseTo((now as number) / 0.75, 9);
});

test("a job is no different from itself", () => {
  const same = compareJobs(before, before);
  expect([same.inputs, same.prices, same.figures, same.checks]).toEqual([[], [], [], []]);
  expect(changeOrderOf(same)).toMatchObject({
    words: [],
    sum: "The price stays as it was: $4,087.02.",
    rest: expect.stringMatching(
      /^Only what is listed here was compared\. Other things .* may have changed/,
    ),
  });
});

test("prices are compared by code, whatever row they stand in", () => {
  const [post, board, paint] = fenceBook.tables.items ?? [];
  const items = [paint, { ...post, unit_price: 25 }, board] as typeof fenceBook.tables.items;
  const dearer = { ...fenceBook, tables: { items: items ?? [] } };
  expect(compareJobs(before, opened(fenceJob, dearer)).prices).toEqual([
    { table: "items", code: "post", label: "Price", oldShown: "$21.35", newShown: "$25.00" },
  ]);
  const without = { ...fenceBook, tables: { items: [post, board] as typeof items & object } };
  expect(compareJobs(before, opened(fenceJob, without)).prices).toEqual([
    expect.objectContaining({ code: "paint", oldShown: "in it", newShown: "left out" }),
  ]);
});

test("a check that fails now is told with its sentence", () => {
  const longer = {
    ...fenceJob,
    inputs: { ...fenceJob.inputs, runs: [{ label: "north", run: 450 }] },
  };
  expect(compareJobs(before, opened(longer)).checks).toContainEqual({
    id: "runs.not_long[1]",
    now: "fails",
    message: "Run north is 450.00 ft long: break it up",
  });
});

test("the change order: words and money for the customer, and no margin, rate or cost", () => {
  expect(changeOrderOf(comparison)).toMatchObject({
    words: [
      "Height: 6.00 ft instead of 5.50 ft.",
      "Runs, row 2 (east): Length: 40.00 ft instead of 33.25 ft.",
    ],
    sum: expect.stringMatching(/^The price rises by \$[\d,.]+, from \$4,087\.02 to \$[\d,.]+\.$/),
  });
  const text = changeOrderMarkdown(changeOrderOf(comparison));
  expect(text).not.toMatch(/margin|%|Material|Labor/i);
});

test("without a list of what a customer may be told, only headline figures that are not money", () => {
  const quiet = template({ ...fence, headline: ["price", "total_run"] });
  const plain = modelOf(quiet, "us");
  const order = changeOrderOf(
    compareJobs(opened(fenceJob, fenceBook, plain), opened(taller, fenceBook, plain)),
  );
  expect(order.words).toEqual(["Length of the fence: 113.70 ft instead of 106.95 ft."]);
});

test("the change order adds up: the difference is that of the prices shown", () => {
  const { price, sum } = changeOrderOf(comparison);
  const amounts = [...sum.matchAll(/\$([\d,]+\.\d\d)/g)].map(([, amount]) =>
    Number(amount?.replaceAll(",", "")),
  ) as [number, number, number];
  expect(amounts[1] + amounts[0]).toBeCloseTo(amounts[2], 2);
  expect(price?.new).toBeCloseTo(amounts[2], 2);
});

test("as Markdown: text of a job cannot become markup", () => {
  const odd = {
    ...taller,
    inputs: { ...taller.inputs, customer: "<b>|*x*|</b>\n# no" },
  };
  const text = officeText(compareJobs(before, opened(odd)));
  expect(text).toContain("\\<b\\>\\|\\*x\\*\\|\\</b\\> \\# no");
  for (const line of text.split("\n").filter((one) => one.startsWith("| Customer"))) {
    expect(line.match(/(?<!\\)\|/g)).toHaveLength(5);
  }
});

test("shares differ by points", () => {
  const shares = template({ ...fence, headline: ["margin"] });
  const of = modelOf(shares, "us");
  const two = compareJobs(opened(fenceJob, fenceBook, of), opened(taller, fenceBook, of));
  expect(officeText(two)).toContain("| Margin on price (margin) | 20.0% | 25.0% | +5 points |");
});

test("as JSON, with exact differences", () => {
  const told = JSON.parse(JSON.stringify(comparisonJson(comparison, changeOrderOf(comparison))));
  expect(told.price.difference).toBeCloseTo(told.price.new - told.price.old, 9);
  expect(told.inputs).toHaveLength(3);
});

test("as a workbook: differences are formulas; the customer's has the change order alone", async () => {
  const customer = readWorkbook(await workbook(comparison, "customer"));
  expect(customer.sheets.map(({ name }) => name)).toEqual(["Change order"]);
  const cells = [...(customer.sheets[0]?.cells.values() ?? [])];
  const formula = cells.find((one) => one.formula !== undefined);
  expect(formula?.formula).toMatch(/^C\d+-B\d+$/);
  const { price } = changeOrderOf(comparison);
  expect(formula?.value).toBeCloseTo((price?.new as number) - (price?.old as number), 9);
  const words = cells.map(({ value }) => String(value)).join(" ");
  expect(words).not.toMatch(/margin|Material/i);
  const office = readWorkbook(await workbook(comparison, "office"));
  expect(office.sheets.map(({ name }) => name)).toEqual(["Change order", "Comparison"]);
});

test("a customer's text that looks like a formula stays text in the workbook", async () => {
  const odd = {
    ...taller,
    inputs: { ...taller.inputs, runs: [{ label: "=1+1", run: 10 }, ...runs.slice(1)] },
  };
  const bytes = await workbook(compareJobs(before, opened(odd)), "customer");
  const cells = [...(readWorkbook(bytes).sheets[0]?.cells.values() ?? [])];
  expect(cells.filter(({ formula }) => formula !== undefined)).toHaveLength(1);
});

test.each([
  ["another template", opened(fenceJob, fenceBook, modelOf({ ...fence, name: "gate" }, "us"))],
  ["other units", { ...before, model: modelOf(priced, "si") }],
])("%s is refused", (_, other) => {
  expect(() => compareJobs(before, other)).toThrow(/only jobs of one template|units/);
});
