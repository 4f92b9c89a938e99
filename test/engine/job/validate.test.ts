import { describe, expect, it } from "vitest";
import { JobError } from "../../../engine/job/job-error.js";
import { validateJob } from "../../../engine/job/validate.js";
import { compile } from "../../../engine/template/compile.js";
import { toy, toyJob } from "../../support/toy.js";

const model = compile(toy, "us");
const inputs = (change: object) => ({ ...toyJob, inputs: { ...toyJob.inputs, ...change } });
const bed = { name: "Wall", wide: 36 };
const without = (key: string) =>
  Object.fromEntries(Object.entries(toyJob).filter(([name]) => name !== key));

const faulty: [what: string, record: unknown, fault: RegExp][] = [
  [
    "an unknown input",
    inputs({ plott: 3 }),
    /inputs: the name "plott" is not known to template toy\. Did you mean "plot"\?/,
  ],
  [
    "a figure that is no input",
    inputs({ soil_total: 3 }),
    /inputs: the name "soil_total" is not known/,
  ],
  [
    "a key of every object",
    inputs({ constructor: 3 }),
    /inputs: the name "constructor" is not known/,
  ],
  [
    "a prototype",
    JSON.parse(JSON.stringify(inputs({})).replace('"plot":', '"__proto__":{},"plot":')),
    /inputs: the name "__proto__" is not known/,
  ],
  [
    "an unknown column",
    inputs({ beds: [{ ...bed, widht: 3 }] }),
    /inputs\.beds\.widht\[1\]: the column "widht" is not known to template toy\. Did you mean "wide"\?/,
  ],
  [
    "an unknown part of the record",
    { ...toyJob, extra: 1 },
    /the record: the name "extra" is not known/,
  ],
  [
    "text for a number",
    inputs({ plot: "20" }),
    /inputs\.plot is "20", but must be a number of ft: write 20, without quotes \(Length of the plot; Along the wall\.; in ft; 1 to 500 ft\)\. Correct the value\./,
  ],
  [
    "a number with another unit",
    inputs({ plot: "48 in" }),
    /inputs\.plot is "48 in", but must be a number of ft: write 4, without quotes \(/,
  ],
  [
    "a number with a unit of another kind",
    inputs({ plot: "48 gal" }),
    /inputs\.plot is "48 gal", but must be a number of ft, without quotes \(/,
  ],
  [
    "text for a number in a row",
    inputs({ beds: [bed, { ...bed, wide: "x" }] }),
    /inputs\.beds\.wide\[2\] is "x", but must be a number of in, without quotes \(/,
  ],
  [
    "a list for a number",
    inputs({ plot: [20] }),
    /inputs\.plot is \[20\], but must be a number \(/,
  ],
  ["a number for text", inputs({ customer: 5 }), /inputs\.customer is 5, but must be text/],
  ["a number for yes or no", inputs({ paved: 1 }), /inputs\.paved is 1, but must be true or false/],
  [
    "one row without a list",
    inputs({ beds: bed }),
    /inputs\.beds is \{.*\}, but must be a list of rows/,
  ],
  ["a number for a row", inputs({ beds: [3] }), /inputs\.beds\[1\] is 3, but must be an object/],
  [
    "too small",
    inputs({ plot: 0.5 }),
    /inputs\.plot is 0\.5, but must be >= 1 \(.*1 to 500 ft\)\. Correct/,
  ],
  ["too large", inputs({ plot: 501 }), /inputs\.plot is 501, but must be <= 500/],
  [
    "a negative width",
    inputs({ beds: [{ ...bed, wide: -36 }] }),
    /inputs\.beds\.wide\[1\] is -36, but must be >= 1/,
  ],
  [
    "a percentage for a share",
    inputs({ spare: 10 }),
    /inputs\.spare is 10 \(1000%\), but must be <= 0\.5: for 10% write 0\.1 .*0% to 50%/,
  ],
  ["half a person", inputs({ people: 1.5 }), /inputs\.people is 1\.5, but must be a whole number/],
  [
    "a row too many",
    inputs({ beds: Array(5).fill(bed) }),
    /inputs\.beds: 5 rows, but the table holds 4 \(Beds\)\. Join rows, or split the job\./,
  ],
  [
    "not a choice",
    inputs({ finish: "shiny" }),
    /inputs\.finish is "shiny", but must be one of: rough, smooth\. Choose one\./,
  ],
  [
    "a date the other way round",
    inputs({ begin: "31.05.2026" }),
    /inputs\.begin is "31\.05\.2026", but must be a date like 2026-05-31/,
  ],
  ["a date as a number", inputs({ begin: 46173 }), /inputs\.begin is 46173, but must be text/],
  [
    "an impossible date",
    inputs({ begin: "2026-02-29" }),
    /inputs\.begin is "2026-02-29", but there is no such day\. Correct the date\./,
  ],
  [
    "a very long text",
    inputs({ remark: "x".repeat(2001) }),
    /inputs\.remark has 2001 characters; 2000 is the most \(Remark\)\. Shorten it\./,
  ],
  [
    "another template",
    { ...toyJob, template: "wall" },
    /template is "wall", but must be "toy"\. Correct the value, or name the template/,
  ],
  ["another version", { ...toyJob, version: 2 }, /version is 2, but must be 3/],
  ["other units", { ...toyJob, units: "si" }, /units is "si", but must be "us"/],
  ["another format", { ...toyJob, rillbook: 2 }, /rillbook is 2, but must be 1/],
  ["no inputs", without("inputs"), /the record: "inputs" is missing\. Add it\./],
  ["no job", without("job"), /the record: "job" is missing/],
  [
    "a number too long for the footer of a page",
    { ...toyJob, job: "7".repeat(101) },
    /job has 101 characters; 100 is the most/,
  ],
  ["an empty name", { ...toyJob, job: "" }, /job is "".*characters/],
  ["no object", [], /the record is \[\], but must be an object/],
];

describe("a job record that cannot be used", () => {
  it.each(faulty)("%s", (_, record, fault) => {
    expect(() => validateJob(model, record, "a.json")).toThrow(JobError);
    expect(() => validateJob(model, record, "a.json")).toThrow(fault);
    expect(() => validateJob(model, record, "a.json")).toThrow(
      /^The job record a\.json cannot be used:\n {2}- /,
    );
  });

  it("is told all its faults at once", () => {
    const record = inputs({ plot: -1, spare: 2, people: "two" });
    try {
      validateJob(model, record, "a.json");
      expect.unreachable();
    } catch (error) {
      const { faults, code, exitStatus } = error as JobError;
      expect(faults).toHaveLength(3);
      expect([code, exitStatus]).toEqual(["job-invalid", 2]);
    }
  });
});

const sound: [what: string, record: unknown][] = [
  ["the toy job", toyJob],
  ["null for a default", inputs({ depth: null, begin: null, finish: null, paved: null })],
  ["no rows", inputs({ beds: [] })],
  ["all rows", inputs({ beds: Array(4).fill(bed) })],
  ["text like a formula", inputs({ customer: "=1+1", remark: "@SUM(A1)" })],
  ["a leap day", inputs({ begin: "2028-02-29" })],
  ["the limits themselves", inputs({ plot: 1, spare: 0.5, people: 9, lowest: -9.5 })],
  [
    "a guide and a schema",
    { ...toyJob, guide: { anything: 1 }, $schema: "x.json", about: "Invented." },
  ],
];

describe("a job record that can", () => {
  it.each(sound)("%s", (_, record) => {
    expect(validateJob(model, record, "a.json")).toBe(record);
  });
});

describe("SI", () => {
  it("has its limits in its own units", () => {
    const si = compile(toy, "si");
    const record = { ...inputs({ depth: 700, beds: [] }), units: "si" };
    expect(() => validateJob(si, record, "a.json")).toThrow(
      /inputs\.depth is 700, but must be <= 609\.6 \(Depth of soil; in mm; 25\.4 to 609\.6 mm\)/,
    );
    expect(
      validateJob(si, { ...inputs({ depth: 609.6, beds: [] }), units: "si" }, "a.json"),
    ).toBeDefined();
  });
});
