import { describe, expect, it } from "vitest";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { TemplateError } from "../../../engine/template/template-error.js";
import { faultsOf, tiny, tinyLines } from "../../support/tiny.js";
import { toy } from "../../support/toy.js";

const source = "invented";
const one = t.calc(t.number, "1", "One");
const twoSheets = (first: string, second: string) =>
  tinyLines(
    {},
    {
      sheets: [
        t.sheet(first, "", [t.lines("A", { a: one })]),
        t.sheet(second, "", [t.lines("B", { b: one })]),
      ],
    },
  );
const rows = (
  columns: t.TableBlock["columns"],
  options: Partial<t.TableBlock> = {},
  more: t.Block[] = [],
) => tinyLines({}, {}, [t.table("beds", "Beds", { rows: 2, ...options }, columns), ...more]);
const shelf = t.table(
  "shelf",
  "",
  { rows: 3 },
  { mark: t.published(t.number, "", { source }), high: t.published(t.number, "", { source }) },
);

const faulty: [what: string, template: t.Template, fault: RegExp][] = [
  // names
  [
    "a name twice",
    tiny([t.lines("A", { a: one }), t.lines("B", { a: one })]),
    /name "a" stands twice/,
  ],
  [
    "a name twice on two sheets",
    tinyLines(
      {},
      {
        sheets: [
          t.sheet("One", "", [t.lines("A", { a: one })]),
          t.sheet("Two", "", [t.lines("B", { a: one })]),
        ],
      },
    ),
    /The name "a" stands twice: sheet One and sheet Two\. Rename one\./,
  ],
  ["a table under a cell's name", rows({ a: one }, { name: "plot" }), /name "plot" stands twice/],
  ["capitals", tinyLines({ Width: one }), /"Width" .* use lower-case words/],
  ["a double underscore", tinyLines({ a__b: one }), /"a__b" .* use lower-case words/],
  ["a dot", tinyLines({ "a.b": one }), /"a\.b" .* use lower-case words/],
  ["an address", tinyLines({ ab12: one }), /"ab12" .* it reads like a cell address/],
  [
    "an address in rows and columns",
    tinyLines({ r1c1: one }),
    /"r1c1" .* reads like a cell address/,
  ],
  ["letters and digits", tinyLines({ branch1: one }), /"branch1" .* letters followed by digits/],
  ["a word of spreadsheets", tinyLines({ true: one }), /"true" .* has a meaning of its own/],
  ["the row", tinyLines({ r: one }), /"r" .* has a meaning of its own/],
  ["a function", tinyLines({ sum: one }), /"sum" .* it is the name of a function/],
  ["a key of every object", tinyLines({ constructor: one }), /"constructor" .* JavaScript keeps/],
  ["a very long name", tinyLines({ ["a".repeat(256)]: one }), /at most 255 characters/],
  ["a column's name", rows({ "Big one": one }), /The column "beds\.Big one" cannot be used/],
  [
    "a message's name",
    tinyLines({ plot_status: one }),
    /"plot_status" stands twice: made for sheet/,
  ],
  [
    "a name of the checks",
    tinyLines({ checks_failed: one }),
    /"checks_failed" stands twice: sheet Ch/,
  ],
  [
    "a message column's name",
    rows({ a: t.input(t.number, ""), status: one }),
    /"status" is made by/,
  ],
  // sheets
  ["no sheet name", twoSheets("One", ""), /Sheet "": sheet names have 1 to 31 characters/],
  ["a long sheet name", twoSheets("One", "x".repeat(32)), /sheet names have 1 to 31 characters/],
  ["a quote in a sheet name", twoSheets("One", "Bob's"), /sheet names have none of '/],
  ["two sheets of one name", twoSheets("Beds", "beds"), /Sheet "beds": two sheets have this name/],
  ["a sheet that is there", twoSheets("One", "Checks"), /every workbook has a sheet of that name/],
  ["a sheet that is there", twoSheets("One", "summary"), /Sheet "summary": every workbook has/],
  ["a sheet that is there", twoSheets("One", "Trail"), /Sheet "Trail": every workbook has/],
  ["names of sheets too alike", twoSheets("Bed 1", "Bed-1"), /"inputs_right_bed_1" stands twice/],
  [
    "nothing to fill in and nothing to check",
    tiny([t.lines("A", { a: one })]),
    /neither inputs nor/,
  ],
  ["an empty sheet", tiny([]), /Sheet "Page": it is empty/],
  // named formulas
  [
    "a named formula in small letters",
    tinyLines({}, { formulas: [t.formula("twice", "", {}, t.number, "2", source)] }),
    /The named formula "twice" cannot be used: use upper-case words/,
  ],
  [
    "a named formula that is a function",
    tinyLines({}, { formulas: [t.formula("SUM", "", {}, t.number, "2", source)] }),
    /"SUM" cannot be used: it is the name of a spreadsheet function/,
  ],
  [
    "a named formula twice",
    tinyLines(
      {},
      {
        formulas: [1, 2].map((n) => t.formula("TWICE", "", {}, t.number, `${n}`, source)),
      },
    ),
    /The named formula "TWICE" is declared twice/,
  ],
  [
    "a named formula that does not hold, used or not",
    tinyLines(
      {},
      {
        formulas: [t.formula("BAD", "", { x: t.length }, t.area, "x", source)],
      },
    ),
    /Named formula BAD: the result should be length\^2 but is length \(at character 1 of: x\)/,
  ],
  [
    "a named formula that does not hold, used",
    tinyLines(
      { a: t.calc(t.number, "BAD(1)", "") },
      { formulas: [t.formula("BAD", "", { x: t.number }, t.number, "y", source)] },
    ),
    /Named formula BAD: the name "y" is not known/,
  ],
  [
    "named formulas in a circle",
    tinyLines(
      { a: t.calc(t.number, "ONE(1)", "") },
      {
        formulas: [
          t.formula("ONE", "", { x: t.number }, t.number, "TWO(x)", source),
          t.formula("TWO", "", { x: t.number }, t.number, "ONE(x)", source),
        ],
      },
    ),
    /Named formula ONE: named formulas call each other in a circle: ONE -> TWO -> ONE/,
  ],
  // formulas
  [
    "a misspelled name",
    tinyLines({ a: t.calc(t.length, "plott*2", "") }),
    /Page, a: the name "plott" is not known\. Did you mean "plot"\? \(at character 1 of: plott\*2\)/,
  ],
  ["a misspelled function", tinyLines({ a: t.calc(t.length, "SQR(plot)", "") }), /mean "SQRT"/],
  [
    "broken grammar",
    tinyLines({ a: t.calc(t.length, "plot+", "") }),
    /Page, a: a value is missing/,
  ],
  [
    "another quantity",
    tinyLines({ a: t.calc(t.area, "plot", "") }),
    /should be length\^2 but is length/,
  ],
  [
    "too many dots",
    rows({ a: one, b: t.calc(t.number, "SUM(beds.a.b)", "") }),
    /"beds\.a\.b" is not kn/,
  ],
  ["a circle of one", tinyLines({ a: t.calc(t.number, "a+1", "") }), /in a circle: a -> a\./],
  [
    "a circle of three",
    tinyLines({
      a: t.calc(t.number, "b", ""),
      b: t.calc(t.number, "d*2", ""),
      d: t.calc(t.number, "a+1", ""),
    }),
    /The formulas go in a circle: a -> b -> d -> a\./,
  ],
  [
    "a circle through a column",
    rows({ a: t.calc(t.number, "SUM(beds.b)", ""), b: t.calc(t.number, "a", "") }),
    /in a circle: beds\.a\[1\] -> beds\.b\[1\] -> beds\.a\[1\]\./,
  ],
  [
    "a row above the first",
    rows({ a: t.calc(t.number, "above.a+1", "") }),
    /beds\.a: the name "above\.a" is not known\. Only a column with `first`/,
  ],
  [
    "a row above in `first`",
    rows({ a: t.calc(t.number, "above.a+1", "", { first: "above.a" }) }),
    /the name "above\.a" is not known/,
  ],
  [
    "a row above outside a table",
    tinyLines({ a: t.calc(t.length, "above.plot", "") }),
    /"above\.plot"/,
  ],
  [
    "a condition of rows that is none",
    rows({ a: one }, { filled: "plot" }),
    /yes or no but is length/,
  ],
  [
    "a sentence with an unknown figure",
    tinyLines({ a: t.check("plot>0", "Too short: {plott}", { label: "" }) }),
    /a_message: the name "plott" is not known\. Did you mean "plot"\?/,
  ],
  [
    "a sentence with a name that every object has",
    tinyLines({ a: t.check("plot>0", "Too short: {constructor}", { label: "" }) }),
    /a_message: the name "constructor" is not known/,
  ],
  [
    "choices from nowhere",
    tinyLines({
      a: t.input(t.text, "", { choices: "beds.name" }),
      b: t.calc(t.text, "a", ""),
    }),
    /a_status: the name "beds\.name" is not known/,
  ],
  [
    "a long formula",
    tinyLines({ a: t.calc(t.length, Array(1700).fill("plot").join("+"), "") }),
    /The formula of a has 8499 characters; 8000 is the most\. Split it/,
  ],
  [
    "a long text in a formula",
    tinyLines({ a: t.calc(t.text, `"${"x".repeat(256)}"`, "") }),
    /The formula of a has a text of 256 characters; 255 is the most\. Join it/,
  ],
  [
    "a table longer than a worksheet",
    rows({ a: one }, { rows: 1_048_577 }),
    /it has 1048577 rows, but must have a whole number from 1 to 1048576/,
  ],
  [
    "a name too long together with its table's",
    rows({ ["a".repeat(200)]: one }, { name: "b".repeat(60) }),
    /The name "b{40}…" has 261 characters; 255 is the most/,
  ],
  [
    "a label that no cell holds",
    tinyLines({ a: t.calc(t.number, "1", "x".repeat(32_768)) }),
    /The label of "a" has 32768 characters; a cell holds 32767\. Shorten it/,
  ],
  [
    "a paragraph of too many lines",
    tinyLines({}, {}, [t.paragraphs("Cautions", "line\n".repeat(254))]),
    /A paragraph on sheet "Page" has 254 line feeds; a cell holds 253/,
  ],
  ["a sheet's name that a program keeps", twoSheets("History", "B"), /keeps this name for itself/],
  [
    "a formula long when opened",
    tinyLines(
      { a: t.calc(t.length, "D(D(D(D(D(D(D(D(D(D(D(plot)))))))))))", "") },
      { formulas: [t.formula("D", "", { x: t.length }, t.length, "x+x", source)] },
    ),
    /The formula of a has \d+ characters; 8000 is the most/,
  ],
  [
    "functions too deep when opened",
    tinyLines(
      { a: t.calc(t.length, "D(D(D(D(D(D(D(plot)))))))", "") },
      {
        formulas: [
          t.formula(
            "D",
            "",
            { x: t.length },
            t.length,
            `${"ABS(".repeat(10)}x${")".repeat(10)}`,
            source,
          ),
        ],
      },
    ),
    /The formula of a has functions 70 deep in one another; 64 is the most/,
  ],
  [
    "columns of unequal length",
    rows({ a: t.calc(t.number, "SUMPRODUCT(beds.b*shelf.high)", ""), b: one }, {}, [shelf]),
    /beds\.a takes columns of unequal length in SUMPRODUCT: beds\.b, shelf\.high/,
  ],
  [
    "columns of unequal length",
    rows({ a: t.calc(t.number, "PICK(beds.b,shelf.high,1)", ""), b: one }, {}, [shelf]),
    /beds\.a takes columns of unequal length in INDEX: beds\.b, shelf\.high/,
  ],
  // functions that would turn an error into a figure
  [
    "the largest of rows that may match none",
    rows({ a: t.calc(t.number, "MAXIFS(beds.b,beds.b,1)", ""), b: one }),
    /beds\.a: MAXIFS is 0 in some programs and an error in others .*LARGEST_WHERE\(column, keys, key\)/,
  ],
  [
    "a count that passes over errors",
    rows({ a: t.calc(t.number, "COUNTIF(beds.b,1)", ""), b: one }),
    /COUNTIF passes over rows in error.*write COUNT_WHERE\(/,
  ],
  [
    "a count by two keys that passes over errors",
    rows({ a: t.calc(t.number, "COUNTIFS(beds.b,1)", ""), b: one }),
    /COUNTIFS passes over rows in error: write SUMPRODUCT\(/,
  ],
  [
    "the least of rows that may match none",
    rows({ a: t.calc(t.number, "MINIFS(beds.b,beds.b,1)", ""), b: one }),
    /MINIFS is 0 in some programs and an error in others .*LEAST_WHERE\(column, keys, key\)/,
  ],
  [
    "the largest of cells that may be blank",
    rows({
      a: t.calc(t.number, "LARGEST_WHERE(beds.tall,beds.b,1)", ""),
      b: one,
      tall: t.input(t.number, ""),
    }),
    /beds\.a takes the largest or least of beds\.tall, whose cells may be blank/,
  ],
  [
    "a look-up that swallows",
    rows({ a: t.calc(t.yesno, "ISNUMBER(MATCH(1,beds.b,0))", ""), b: one }),
    /ISNUMBER takes a cell, .*write LISTED\(keys, key\)/,
  ],
  [
    "a blank in a calculation",
    tinyLines({ a: t.calc(t.yesno, "ISBLANK(plot+1[ft])", "") }),
    /ISBLANK takes a cell/,
  ],
  [
    "an error asked for",
    tinyLines({ a: t.calc(t.yesno, "ISERROR(plot)", "") }),
    /ISERROR turns any error into a yes/,
  ],
  [
    "an error asked for in a named formula",
    tinyLines(
      { a: t.calc(t.yesno, "BAD(plot)", "") },
      { formulas: [t.formula("BAD", "", { x: t.length }, t.yesno, "ISERROR(x)", "")] },
    ),
    /Named formula BAD: ISERROR turns any error into a yes/,
  ],
  [
    "a name of the standard look-ups",
    tinyLines({}, { formulas: [t.formula("PICK", "", { x: t.length }, t.length, "x", "")] }),
    /The named formula "PICK" is declared twice/,
  ],
  // inputs
  [
    "an unused input",
    tinyLines({ a: t.input(t.number, "") }),
    /The input "a" is used by no formula\. Use it, or take it out\./,
  ],
  [
    "an unused column",
    rows({ a: t.input(t.number, ""), b: t.input(t.text, ""), d: t.calc(t.number, "a", "") }),
    /The input "beds\.b" is used by no formula/,
  ],
  [
    "a default of another kind",
    tinyLines({ a: t.input(t.number, "", { default: "2" }) }),
    /given "2", but/,
  ],
  [
    "a default out of range",
    tinyLines({ a: t.input(t.number, "", { default: 9, most: 8 }) }),
    /"a" is given 9, which breaks its own rule/,
  ],
  [
    "a default that is no whole number",
    tinyLines({ a: t.input(t.count, "", { default: 1.5, whole: true }) }),
    /"a" is given 1\.5, which breaks its own rule/,
  ],
  [
    "a default that is no choice",
    tinyLines({ a: t.input(t.text, "", { default: "c", choices: ["a", "b"] }) }),
    /"a" is given "c", which breaks its own rule/,
  ],
  [
    "no possible value",
    tinyLines({ a: t.input(t.number, "", { least: 2, most: 1 }) }),
    /no value can/,
  ],
  ["no choices", tinyLines({ a: t.input(t.text, "", { choices: [] }) }), /"a" has no choices/],
  [
    "choices of numbers",
    tinyLines({ a: t.input(t.number, "", { choices: ["1"] }) }),
    /must be text/,
  ],
  [
    "a comma in a choice",
    tinyLines({ a: t.input(t.text, "", { choices: ["a,b"] }) }),
    /"a,b": a list/,
  ],
  [
    "too many choices",
    tinyLines({ a: t.input(t.text, "", { choices: Array(60).fill("choice") }) }),
    /more than 253 characters together/,
  ],
  [
    "a published figure without a value",
    tinyLines({ a: t.published(t.number, "", { source }) }),
    /"a" is a published figure without a value/,
  ],
  [
    "a published date",
    tinyLines({ a: t.published(t.date, "", { source, value: "2026-01-01" }) }),
    /"a" is a published date/,
  ],
  [
    "a price out of a table",
    tinyLines({ a: t.book(t.money, "") }),
    /office-book figures stand in tables/,
  ],
  // tables
  ["no rows", rows({ a: one }, { rows: 0 }), /Table "beds": it has 0 rows/],
  ["half a row", rows({ a: one }, { rows: 1.5 }), /Table "beds": it has 1\.5 rows/],
  [
    "more rows to open with than rows",
    rows({ a: one }, { opening: 3 }),
    /opens with 3 rows, but has 2/,
  ],
  ["no columns", rows({}), /Table "beds": it has no columns/],
  [
    "more data than rows",
    rows({ a: t.published(t.number, "", { source }) }, { data: [{ a: 1 }, { a: 2 }, { a: 3 }] }),
    /Table "beds": it has 2 rows, but 3 rows of data/,
  ],
  [
    "data for no column",
    rows({ a: t.published(t.number, "", { source }) }, { data: [{ a: 1, b: 2 }] }),
    /its data has "b", which is no input or published column/,
  ],
  [
    "data for a formula",
    rows({ a: one }, { data: [{ a: 1 }] }),
    /its data has "a", which is no input/,
  ],
  [
    "data of another kind",
    rows({ a: t.published(t.number, "", { source }) }, { data: [{ a: "1" }] }),
    /"beds\.a" is given "1", but holds a plain number/,
  ],
  [
    "beside nothing",
    rows({ a: one }, { beside: "bads" }),
    /stands beside "bads", which is no table/,
  ],
  [
    "beside a longer table",
    rows({ a: one }, { beside: "shelf" }, [shelf]),
    /it has 2 rows, but shelf, which it stands beside, 3/,
  ],
  [
    "prices from nowhere",
    rows({ a: t.book(t.money, "") }),
    /has office-book columns, but no `from`/,
  ],
  [
    "prices used by nothing",
    rows({ a: t.book(t.money, "") }, { from: "a", usedBy: ["bed.item"] }),
    /usedBy names "bed\.item", which is no /,
  ],
  [
    "codes of nothing",
    { ...rows({ a: t.input(t.text, "Item", { codeOf: "itms" }) }), office: [] },
    /The input "Item" holds codes of "itms", but no table is filled from it/,
  ],
  // lists of names
  ["a headline of nothing", tinyLines({}, { headline: ["plan"] }), /The headline names "plan"/],
  [
    "roles of nothing",
    tinyLines({}, { roles: { price: "plan", cost: "plot", sections: [] } }),
    /The role price names "plan", which is no single cell/,
  ],
  [
    "a chart of nothing",
    tinyLines({}, {}, [
      t.chart("Curve", "", "", [{ label: "", x: "beds.a", y: "beds.b", marks: "line" }]),
    ]),
    /The chart "Curve" names "beds\.a", which is no column or single cell/,
  ],
  [
    "a chart of unlike rows",
    rows({ a: t.calc(t.count, "2", "") }, {}, [
      t.chart("Curve", "", "", [{ label: "", x: "beds.a", y: "plot", marks: "line" }]),
    ]),
    /The chart "Curve" joins beds\.a and plot, which have not as many rows/,
  ],
  [
    "a chart of several units along one axis",
    tinyLines({ a: t.calc(t.smallLength, "plot", ""), b: t.calc(t.count, "2", "") }, {}, [
      t.chart("Curve", "", "", [
        { label: "", x: "b", y: "plot", marks: "line" },
        { label: "", x: "b", y: "a", marks: "line" },
      ]),
    ]),
    /The chart "Curve" draws plot and a along one axis, in different units/,
  ],
  [
    "a line of texts",
    tinyLines({}, {}, [
      t.chart("Curve", "", "", [{ label: "", x: "plot", y: "title", marks: "line" }]),
    ]),
    /The chart "Curve" draws "title", which holds no numbers/,
  ],
  [
    "names without texts",
    tinyLines({}, {}, [
      t.chart("Curve", "", "", [{ label: "N", x: "plot", y: "plot", marks: "names" }]),
    ]),
    /The chart "Curve": the names "N" have no column or cell of texts/,
  ],
  [
    "bars with texts of their own",
    tinyLines({}, {}, [
      t.chart("Bars", "", "", [
        { label: "B", x: "title", y: "plot", marks: "bars", says: "title" },
      ]),
    ]),
    /The chart "Bars": the bars "B" show their figures/,
  ],
  [
    "figures at points",
    tinyLines({}, {}, [
      t.chart("Curve", "", "", [{ label: "P", x: "plot", y: "plot", marks: "points", says: true }]),
    ]),
    /The chart "Curve": "P" needs a column or cell of texts/,
  ],
  [
    "bars beside lines",
    tinyLines({}, {}, [
      t.chart("Both", "", "", [
        { label: "B", x: "title", y: "plot", marks: "bars" },
        { label: "L", x: "plot", y: "plot", marks: "line" },
      ]),
    ]),
    /The chart "Both" has bars beside lines or points/,
  ],
];

describe("a template with a fault does not load, and says why", () => {
  it.each(faulty)("%s", (_, template, fault) => {
    for (const system of t.unitSystems) {
      expect(faultsOf(template, system).join("\n")).toMatch(fault);
    }
  });

  it("tells all faults at once, under the template's name", () => {
    const two = tinyLines({ a: t.calc(t.area, "plot", ""), b: t.calc(t.area, "plott", "") });
    expect(() => compile(two, "us")).toThrow(TemplateError);
    expect(() => compile(two, "us")).toThrow(
      /^Template "tiny" cannot be used:\n {2}- Page, a: .*\n {2}- /,
    );
    expect(faultsOf(two)).toHaveLength(2);
  });

  it("tells the fault of a formula once for all rows", () => {
    expect(faultsOf(rows({ a: t.calc(t.area, "plot", "") }, { rows: 9 }))).toHaveLength(1);
  });
});

const sound: [what: string, template: t.Template][] = [
  ["the toy", toy],
  ["lines", tinyLines({ a: one })],
  [
    "digits in a sheet's name",
    tinyLines(
      {},
      {
        sheets: ["1", "2"].map((n) => {
          const cells = {
            [`x_${n}`]: t.input(t.number, ""),
            [`y_${n}`]: t.calc(t.number, `x_${n}`, ""),
          };
          return t.sheet(`Bed ${n}`, "", [t.lines("", cells)]);
        }),
      },
    ),
  ],
  ["a column of another table's key", rows({ plot: one })],
  [
    "a column whose name ends like a message",
    rows({ a: t.calc(t.text, '"x"', ""), own_message: t.calc(t.text, "a", "") }),
  ],
  [
    "an input used by a check only",
    tinyLines({
      a: t.input(t.number, ""),
      b: t.check("a>0", "", { label: "" }),
    }),
  ],
  [
    "columns of unequal length in functions of their own",
    rows({ a: t.calc(t.number, "SUMPRODUCT(beds.b*1)+SUM(beds.b,shelf.high)", ""), b: one }, {}, [
      shelf,
    ]),
  ],
];

describe("a sound template loads", () => {
  it.each(sound)("%s", (_, template) => {
    for (const system of t.unitSystems) expect(faultsOf(template, system)).toEqual([]);
  });
});
