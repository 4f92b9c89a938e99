import { describe, expect, it } from "vitest";
import type { OfficeBook } from "../../../engine/book/office-book.js";
import { valuesOf } from "../../../engine/book/values.js";
import type { Value } from "../../../engine/formula/value.js";
import { dateInWords, serialOf, writtenDate } from "../../../engine/job/date.js";
import type { JobRecord } from "../../../engine/job/record.js";
import { newJob } from "../../../engine/job/start.js";
import { validateJob } from "../../../engine/job/validate.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { toy, toyBook, toyJob } from "../../support/toy.js";

const model = compile(toy, "us");
const withInputs = (change: object): JobRecord => ({
  ...toyJob,
  inputs: { ...toyJob.inputs, ...change },
});
function valueIn(job: JobRecord, id: string, book: OfficeBook = toyBook): Value {
  return valuesOf(model, job, book)[model.byId.get(id)?.index as number] as Value;
}

const taken: [what: string, change: object, id: string, value: Value][] = [
  ["a number given", {}, "plot", 20],
  ["a default", {}, "depth", 6],
  ["a default for null", { depth: null }, "depth", 6],
  ["zero for zero", { spare: 0 }, "spare", 0],
  ["no for no", { paved: false }, "paved", false],
  ["a date as its serial number", {}, "begin", 46173], // 31 May 2026, LibreOffice: DATE(2026;5;31)
  ["nothing for what is optional", { begin: null }, "begin", null],
  ["nothing for an empty text", { remark: "" }, "remark", null],
  ["text as it is", { customer: "=1+1" }, "customer", "=1+1"],
  ["a default in a row in use", {}, "beds.soil[1]", "loam"],
  ["no default in a row that is not", {}, "beds.soil[3]", null],
  ["a published figure", {}, "soils.weight[2]", 100],
  ["a price by its code", {}, "edgings.cost[1]", 4],
  [
    "a price by its code in small letters",
    { beds: [{ name: "W", wide: 20, item: "oak" }] },
    "edgings.cost[1]",
    4,
  ],
  ["a date of the office book", {}, "edgings.quoted[1]", 46142],
  ["no price that is not used", {}, "edgings.code[2]", null],
  [
    "no price that the book lacks",
    { beds: [{ name: "W", wide: 20, item: "GOLD" }] },
    "edgings.code[1]",
    null,
  ],
  [
    "a choice in capitals",
    { beds: [{ name: "W", wide: 20, soil: "SAND" }] },
    "beds.soil[1]",
    "SAND",
  ],
];

describe("the values of a job before calculation", () => {
  it.each(taken)("%s", (_, change, id, value) => {
    expect(valueIn(withInputs(change), id)).toBe(value);
  });

  it("are null where a formula stands", () => {
    for (const { index, native } of model.cells) {
      if (native !== undefined) expect(valuesOf(model, toyJob, toyBook)[index]).toBe(null);
    }
  });

  it("of SI jobs have defaults and prices in SI", () => {
    const si = compile(toy, "si");
    const values = valuesOf(si, { ...toyJob, units: "si" }, toyBook);
    const of = (id: string) => values[si.byId.get(id)?.index as number];
    expect(of("plot")).toBe(20); // given in metres
    expect(of("depth")).toBe(152.4);
    expect(of("hose")).toBeCloseTo(30.283294272, 9); // 8 gal/min, NIST SP 811
    expect(of("spare")).toBe(0.1);
    expect(of("edgings.cost[1]")).toBeCloseTo(4 / 0.3048, 9);
  });
});

const incomplete: [what: string, change: object, book: OfficeBook, fault: RegExp][] = [
  [
    "no plot",
    { plot: null },
    toyBook,
    /inputs\.plot \(Length of the plot\) is missing\. Give it a value\./,
  ],
  ["an empty customer", { customer: "" }, toyBook, /inputs\.customer \(Customer\) is missing/],
  [
    "a bed without a name",
    { beds: [{ wide: 20 }] },
    toyBook,
    /inputs\.beds\.name\[1\] \(Bed\) is missing/,
  ],
  [
    "a bed without a width",
    { beds: [{ name: "x" }] },
    toyBook,
    /inputs\.beds\.wide\[1\] \(Width\) is missing/,
  ],
  [
    "a soil that is not in the table",
    { beds: [{ name: "x", wide: 20, soil: "clay" }] },
    toyBook,
    /inputs\.beds\.soil\[1\] is "clay", but must be one of: loam, sand, peat\. Choose one\./,
  ],
  [
    "an office book without the table",
    {},
    { ...toyBook, tables: {} },
    /The office book "Toy prices" cannot be used:\n.*it has no table "edgings", which the template toy reads/,
  ],
  [
    "more prices than rows",
    { beds: [{ name: "x", wide: 20, item: "OAK" }] },
    { ...toyBook, tables: { edgings: Array(5).fill({ code: "OAK", cost: 1 }) } },
    /5 rows of "edgings" are wanted, but the bid holds 4/,
  ],
];

describe("a job that is not complete", () => {
  it.each(incomplete)("%s", (_, change, book, fault) => {
    expect(() => valuesOf(model, withInputs(change), book)).toThrow(fault);
  });
});

describe("dates", () => {
  // LibreOffice's day numbers, counted from 1899-12-30
  const dates: [string, number | undefined][] = [
    ["1900-03-01", 61],
    ["2000-01-01", 36526],
    ["2024-02-29", 45351],
    ["2026-05-31", 46173],
    ["2023-02-29", undefined],
    ["2026-13-01", undefined],
    ["2026-00-10", undefined],
    ["2026-04-31", undefined],
    ["26-04-30", undefined],
    ["2026-4-3", undefined],
    ["2026-05-31T00:00", undefined],
    ["", undefined],
  ];
  it.each(dates)("%s is day %d", (written, serial) => {
    expect(serialOf(written)).toBe(serial);
    if (serial !== undefined) expect(writtenDate(serial)).toBe(written);
  });

  it.each([
    ["2026-11-05", "November 5, 2026"],
    ["2024-02-29", "February 29, 2024"],
    ["2026-02-29", "2026-02-29"],
  ])("%s is said %s", (written, said) => {
    expect(dateInWords(written)).toBe(said);
  });
});

describe("a new job", () => {
  it.each(t.unitSystems)(
    "passes its own schema, and lacks only what must be given (%s)",
    (system) => {
      const own = compile(toy, system);
      const job = JSON.parse(JSON.stringify(newJob(own, "T-2"))) as JobRecord;
      expect(validateJob(own, job, "new.json")).toBe(job);
      expect(() => valuesOf(own, job, toyBook)).toThrow(
        /customer .*\n.*plot .*\n.*beds\.name\[1\] .*\n.*beds\.wide\[1\] .*is missing\. Give it a value\.$/,
      );
      const filled = {
        ...job,
        inputs: { ...job.inputs, customer: "X", plot: 20, beds: [{ name: "Wall", wide: 36 }] },
      };
      expect(validateJob(own, filled, "new.json")).toBe(filled);
      expect(valuesOf(own, filled, toyBook)).toHaveLength(own.cells.length);
    },
  );

  it("asks for what nobody else gives, and tells what it means", () => {
    const { guide, inputs } = newJob(model, "T-2") as JobRecord & {
      guide: Record<string, unknown>;
    };
    expect(guide.plot).toEqual({
      means: "Length of the plot. Along the wall.",
      unit: "ft",
      rule: "1 to 500 ft",
    });
    expect(inputs).toEqual({ customer: null, plot: null, beds: [{ name: null, wide: null }] });
    expect(Object.keys(guide)).toEqual(["customer", "plot", "beds.name", "beds.wide"]);
  });
});
