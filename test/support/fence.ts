import type { OfficeBook } from "../../engine/book/office-book.js";
import { valuesOf } from "../../engine/book/values.js";
import type { Value } from "../../engine/formula/value.js";
import type { JobRecord } from "../../engine/job/record.js";
import {
  area,
  book,
  calc,
  check,
  count,
  date,
  formula,
  input,
  length,
  lines,
  money,
  number,
  paragraphs,
  percent,
  prose,
  published,
  sheet,
  speed,
  table,
  template,
  text,
  weight,
  yesno,
} from "../../engine/template/index.js";
import type { Model } from "../../engine/template/model.js";
import type { Identity } from "../../engine/workbook/write/identity.js";

/**
 * A small invented trade with everything the engine offers: rows, a table beside another, published
 * figures, prices, named formulas within one another, checks. All figures are made up for the tests.
 */
export const fence = template({
  name: "fence",
  version: 3,
  title: "Fence (invented, for tests)",
  headline: ["price"],
  formulas: [
    formula(
      "WIND_PRESSURE",
      "Pressure of the wind, lb/ft²",
      { wind: "ft/s" },
      "lb/ft²",
      "0.00256*(wind*0.681818)^2",
      "made up for the test of the engine",
    ),
    formula(
      "WIND_FORCE",
      "Force of the wind on a face",
      { face: area, wind: speed },
      weight,
      "WIND_PRESSURE(wind)*face",
      "made up for the test of the engine",
    ),
    formula(
      "POST_COUNT",
      "Posts for a run, one more than its fields",
      { run: length, apart: length },
      count,
      "ROUNDUP(ROUND(run/apart,6),0)+1",
      "geometry",
    ),
  ],
  sheets: [
    sheet("Site", "Where the fence stands.", [
      lines("Site", {
        customer: input(text, "Customer"),
        bid_date: input(date, "Date of the bid"),
        height: input(length, "Height", { default: 4, least: 1, most: 12 }),
        wind: input(speed, "Wind", { default: 88, least: 0, most: 200 }),
        soil: input(text, "Soil", { choices: "soils.soil", default: "loam" }),
        spacing: calc(
          length,
          "INDEX(soils.spacing,MATCH(soil,soils.soil,0))",
          "Space between posts",
        ),
      }),
      table(
        "soils",
        "Soils",
        {
          rows: 3,
          data: [
            { soil: "sand", spacing: 6 },
            { soil: "loam", spacing: 8 },
            { soil: "clay", spacing: 9.5 },
          ],
        },
        {
          soil: published(text, "Soil", { source: "made up for the test" }),
          spacing: published(length, "Space between posts", { source: "made up for the test" }),
          holds: calc(text, (row) => (row === 3 ? 'customer&""' : '"a usual fence"'), "Holds"),
        },
      ),
    ]),
    sheet("Runs", "The runs of the fence.", [
      table(
        "runs",
        "Runs",
        { rows: 5, filled: "run>0" },
        {
          label: input(text, "Run", { optional: true }),
          run: input(length, "Length", { least: 0, most: 500 }),
          heading: calc(text, 'label&" side"', "Heading on the crew's sheet"),
          posts: calc(count, "POST_COUNT(run,spacing)", "Posts"),
          face: calc(area, "run*height", "Face"),
          so_far: calc(length, "above.so_far+run", "So far", { first: "run" }),
          push: calc(weight, "WIND_FORCE(face,wind)", "Push of the wind", { decimals: 1 }),
          not_long: check("run<=400[ft]", "Run {label} is {run} long: break it up", {
            label: "Not too long",
            level: "look",
          }),
        },
      ),
      table(
        "paint",
        "Paint",
        { rows: 5, beside: "runs", filled: "run>0" },
        {
          coats: input(count, "Coats", { default: 2, least: 0, most: 4, whole: true }),
          painted: calc(area, "coats*face*2", "Painted"),
        },
      ),
      lines("Together", {
        total_run: calc(length, "SUM(runs.run)", "Length of the fence"),
        total_posts: calc(count, "SUM(runs.posts)", "Posts"),
        total_painted: calc(area, "SUM(paint.painted)", "Painted area"),
        worst_push: calc(weight, "MAX(runs.push)", "Strongest push"),
        gate: input(yesno, "With a gate", { default: false }),
        gate_cost: calc(money, "IF(gate,310[$],0[$])", "Gate, not in the price"),
      }),
    ]),
    sheet("Price", "What it costs.", [
      table(
        "items",
        "From the office book",
        { rows: 4, from: "items", usedBy: ["takeoff.code"] },
        {
          code: book(text, "Code"),
          unit_price: book(money, "Price"),
          supplier: book(text, "Supplier"),
          good_until: book(date, "Good until"),
        },
      ),
      table(
        "takeoff",
        "Materials",
        { rows: 3, data: [{ code: "post" }, { code: "board" }, { code: "paint" }] },
        {
          code: input(text, "Code"),
          quantity: calc(
            number,
            (row) =>
              ["total_posts", "SUMPRODUCT(runs.run*1.05)/0.5[ft]", "total_painted/250[ft²]"][
                row - 1
              ] as string,
            "Quantity",
          ),
          each: calc(money, "INDEX(items.unit_price,MATCH(code,items.code,0))", "Each"),
          cost: calc(money, "quantity*each", "Cost"),
          quoted: check(
            "INDEX(items.good_until,MATCH(code,items.code,0))>=bid_date",
            "The quote for {code} has expired: ask again",
            { label: "Quote stands" },
          ),
        },
      ),
      lines("Price", {
        margin: input(percent, "Margin on price", { default: 0.2, least: 0, most: 0.9 }),
        materials: calc(money, "SUM(takeoff.cost)", "Materials"),
        labor: calc(money, "total_posts*75[$]+IF(worst_push>2000[lb],500[$],0[$])", "Labor"),
        price: calc(money, "(materials+labor)/(1-margin)", "Price", { strong: true }),
        strong_enough: check(
          "worst_push<=5000[lb]",
          "The wind pushes with {worst_push}: too much",
          {
            label: "Strong enough",
          },
        ),
      }),
      prose("For the customer", {
        offer: calc(text, '"A fence of "&FIXED(total_run,0)&" ft for "&customer', "Offer"),
      }),
      paragraphs("Caution", "Call before you dig."),
    ]),
  ],
});

export const fenceBook: OfficeBook = {
  name: "invented prices",
  asOf: "2026-03-01",
  mark: "b".repeat(64),
  tables: {
    items: [
      { code: "post", unit_price: 21.35, supplier: "Supplier A", good_until: "2026-12-31" },
      { code: "board", unit_price: 3.1, supplier: "Supplier B", good_until: "2026-12-31" },
      { code: "paint", unit_price: 48.9, supplier: "Supplier A", good_until: "2026-12-31" },
      { code: "gate", unit_price: 310, supplier: "Supplier B", good_until: "2026-12-31" },
    ],
  },
};

export const fenceJob: JobRecord = {
  rillbook: 1,
  job: "F-1",
  template: "fence",
  version: 3,
  units: "us",
  about: "invented",
  inputs: {
    customer: "Customer One",
    bid_date: "2026-05-04",
    height: 5.5,
    soil: "clay",
    runs: [
      { label: "north", run: 61.7 },
      { label: "east", run: 33.25 },
      { label: "gate side", run: 12 },
    ],
    paint: [{ coats: 2 }, { coats: 3 }, { coats: 2 }],
  },
};

export const fenceIdentity = (model: Model): Identity => ({
  job: fenceJob.job,
  template: "fence",
  version: 3,
  units: model.system,
  book: fenceBook.name,
  bookAsOf: fenceBook.asOf,
  bookMark: fenceBook.mark,
});

export const fenceGiven = (model: Model, job: JobRecord = fenceJob): Value[] =>
  valuesOf(model, { ...job, units: model.system }, fenceBook);
