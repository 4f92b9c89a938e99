import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { valuesOf } from "../../../engine/book/values.js";
import { calculate, calculateFast, firstDifference } from "../../../engine/evaluate/calculate.js";
import { judge } from "../../../engine/evaluate/judge.js";
import { mustBear, questionsOf } from "../../../engine/evaluate/judge-parts.js";
import { judgedValues } from "../../../engine/evaluate/judge-sheets.js";
import { CellError, type Value } from "../../../engine/formula/value.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { toy, toyBook, toyJob } from "../../support/toy.js";
import { givenFor, lookupCases, modelOf } from "./formula-cases.js";
import { anyNumber, anyText, anyYesno } from "./random-formulas.js";

describe("judge and closures agree", () => {
  const kinds: [string, fc.Arbitrary<string>, t.Quantity, number][] = [
    ["numbers", anyNumber, t.number, 400],
    ["texts", anyText, t.text, 250],
    ["conditions", anyYesno, t.yesno, 250],
  ];
  it.each(kinds)("on random formulas that yield %s", (_, formulas, quantity, runs) => {
    // many formulas in one template: hyperformula takes its time to build
    const texts = fc.sample(formulas, { numRuns: runs, seed: 20261 });
    const cells = Object.fromEntries(
      texts.map((text, i) => [`f_${i}`, t.calc(quantity, text, "")]),
    );
    const model = modelOf(cells);
    const given = givenFor(model);
    const [first, second] = [judge(model, given), calculateFast(model, given)];
    const differing = model.order
      .filter((cell) => firstDifference({ ...model, order: [cell] }, first, second) !== undefined)
      .map(({ id, index, declaration }) => {
        const formula = declaration.kind === "calc" ? declaration.formula : id;
        return `${formula}: ${first[index]} and ${second[index]}`;
      });
    expect(differing).toEqual([]);
    // and so it is part by part
    const questions = questionsOf(model, second);
    expect(() => mustBear(questions, judgedValues(questions.task()))).not.toThrow();
    // the sample is worth its name: most formulas give values, some give errors
    const errors = model.order.filter(({ index }) => first[index] instanceof CellError).length;
    expect(errors).toBeLessThan(runs * 0.7);
    expect(errors).toBeGreaterThan(3);
  });
});

const fixedCases: [formula: string, quantity: t.Quantity, value: Value | RegExp][] = [
  // blanks
  ["n_blank+1", t.number, 1],
  ["n_blank", t.number, 0],
  ["IF(ISBLANK(n_blank),1,2)", t.number, 1],
  ["n_blank=0", t.yesno, true],
  ['INDEX(rows.name,3)&"."', t.text, "."],
  ['INDEX(rows.name,3)=""', t.yesno, true],
  ["SUM(rows.x)", t.number, 0.5],
  ["MIN(rows.y)", t.number, 2],
  ["SUMPRODUCT(rows.x*rows.y)", t.number, 2 - 3000],
  ["SUMPRODUCT((rows.x>0)*(rows.y>1)*1)", t.number, 1],
  ['SUMPRODUCT((rows.name="oak")*rows.y)', t.number, 4],
  ['COUNT_WHERE(rows.name,"oak")', t.number, 2],
  // errors
  ["1/n_zero", t.number, /#DIV\/0!/],
  ["n_bad+n_missing", t.number, /#DIV\/0!/],
  ["n_missing+n_bad", t.number, /#N\/A/],
  ["IF(TRUE,1,n_bad)", t.number, 1],
  ["IF(n_bad>0,1,2)", t.number, /#DIV\/0!/],
  ["ISNUMBER(n_bad)", t.yesno, false],
  ["ISERROR(n_bad)", t.yesno, true],
  ["ISERROR(1/n_zero)", t.yesno, true],
  ["ISERROR(1e300*1e300)", t.yesno, true],
  ["ISERROR(n_blank)", t.yesno, false],
  ["ISERROR(s_a)", t.yesno, false],
  ["IF(ISERROR(n_missing),1,2)", t.number, 1],
  ["ISERROR(SUM(cracked.v))", t.yesno, true],
  ["ISERROR(SUM(cracked.w))", t.yesno, false],
  ["SQRT(n_b)", t.number, /#NUM!/],
  ["LN(n_zero)", t.number, /#NUM!/],
  ["CHOOSE(3,1,2)", t.number, /#VALUE!/],
  ["CHOOSE(2,n_bad,7)", t.number, 7],
  ["INDEX(rows.x,5+1)", t.number, /#REF!/],
  // errors in a column
  ["SUM(cracked.v)", t.number, /#DIV\/0!/],
  ["MAX(cracked.v)", t.number, /#DIV\/0!/],
  ["LARGE(cracked.v,1)", t.number, /#DIV\/0!/],
  ["SUMPRODUCT(cracked.v*cracked.w)", t.number, /#DIV\/0!/],
  // the loop over rows and the rows of a key: the first error in a column, whatever the rows of another say
  ["SUMPRODUCT((cracked.w>0)*cracked.v)", t.number, /#DIV\/0!/],
  ["SUMPRODUCT((cracked.v=3.25)*1)", t.number, /#DIV\/0!/],
  ["SUMPRODUCT((cracked.w=-1)*1,cracked.v)", t.number, /#DIV\/0!/],
  ["SUMPRODUCT((rows.x=n_bad)*1,rows.y)", t.number, /#DIV\/0!/],
  ["SUMPRODUCT((rows.x>n_missing)*cracked.v)", t.number, /#N\/A/],
  ['SUMPRODUCT((rows.name="OAK")*1)', t.number, 2],
  ['SUMPRODUCT((rows.name="")*1)', t.number, 1],
  ['SUMPRODUCT((rows.name="oak")*1,rows.y)', t.number, 4],
  ["SUMPRODUCT((rows.y=n_blank)*1)", t.number, 1],
  ["INDEX(cracked.v,3)", t.number, 3.25],
  ["INDEX(cracked.v,2)", t.number, /#DIV\/0!/],
  ["MATCH(3.25,cracked.v,0)", t.number, 3],
  ["MATCH(9,cracked.v,0)", t.number, /#N\/A/],
  ...lookupCases,
  // other programs read * as any run of letters; that it is no choice, LISTED says in all of them
  ['PICK(rows.y,rows.name,"*")', t.number, /#N\/A/],
  // out of bounds on the way
  ["IF(1e300*1e300>1,1,2)", t.number, /#NUM!/],
  ["MIN(1e300*1e300,3)", t.number, /#NUM!/],
  // spreadsheet arithmetic
  ["-2^2", t.number, 4],
  ["2^3^2", t.number, 64],
  ["-2%", t.number, -0.02],
  ["n_b*n_zero", t.number, 0],
  ["ROUNDUP(ROUND(100*1.1,6),0)", t.number, 110],
  ["INT(n_b-1.5)", t.number, -9],
  ["MOD(n_b,3)", t.number, 2],
  // text
  ['"a""b"', t.text, 'a"b'],
  ["s_b", t.text, "=b"],
  ['s_a="OAK TREE"', t.yesno, true],
  ["FIXED(1234.565,2)", t.text, "1,234.57"],
];

describe("both give what spreadsheets give", () => {
  const cells = Object.fromEntries(
    fixedCases.map(([text, quantity], i) => [`f_${i}`, t.calc(quantity, text, "")]),
  );
  const model = modelOf(cells);
  const given = givenFor(model);
  const found = calculate(model, given);
  it.each(fixedCases.map((one, i) => [...one, i] as const))("%s", (_, __, value, i) => {
    const actual = found[model.byId.get(`f_${i}`)?.index as number];
    if (value instanceof RegExp) expect(String(actual)).toMatch(value);
    else expect(actual).toBe(value);
  });
});

describe("a difference between the two", () => {
  const model = compile(toy, "us");
  const given = valuesOf(model, toyJob, toyBook);
  const first = judge(model, given);
  const index = model.byId.get("soil_total")?.index as number;
  const changed = (value: Value) => first.map((one, i) => (i === index ? value : one));
  const size = first[index] as number;
  const cases: [what: string, value: Value, found: boolean][] = [
    ["the same number", size, false],
    ["the last digit", size * (1 + 1e-14), false],
    ["a part in 100 million", size * (1 + 1e-8), true],
    ["text", String(size), true],
    ["an error", new CellError("#N/A"), true],
    ["nothing", null, true],
  ];
  it.each(cases)("%s", (_, value, expected) => {
    expect(firstDifference(model, first, changed(value))?.id).toBe(
      expected ? "soil_total" : undefined,
    );
  });

  it("in a blank cell is none", () => {
    expect(firstDifference(model, first, calculateFast(model, given))).toBeUndefined();
  });
});

describe("errors carry the cell they arose in", () => {
  it("through the cells that depend on it", () => {
    const model = modelOf({ after: t.calc(t.number, "n_bad*2", "") });
    const given = givenFor(model);
    const value = calculate(model, given)[model.byId.get("after")?.index as number];
    expect(value).toEqual(new CellError("#DIV/0!", "n_bad"));
  });
});

describe("rows of the capacity that are not in use", () => {
  const model = compile(toy, "us");
  const given = valuesOf(model, toyJob, toyBook);
  const of = (list: readonly Value[], id: string) => list[model.byId.get(id)?.index as number];

  it("count for nothing, and count once they are filled", () => {
    const before = calculate(model, given);
    const filled = [...given];
    const put = (id: string, value: Value) => {
      filled[model.byId.get(id)?.index as number] = value;
    };
    put("beds.name[4]", "Last");
    put("beds.wide[4]", 54);
    put("beds.soil[4]", "peat");
    const after = calculate(model, filled);
    // 54 in of 20 ft, 6 in deep, a tenth to spare
    expect(of(after, "beds.filling[4]")).toBeCloseTo((4.5 * 20 * 0.5 * 1.1) / 27, 12);
    expect(of(after, "soil_total")).toBeCloseTo(
      (of(before, "soil_total") as number) + (4.5 * 20 * 0.5 * 1.1) / 27,
      12,
    );
    expect(of(before, "beds.filling[4]")).toBe(0);
    expect(of(before, "beds.said[4]")).toBe("");
    expect(of(after, "beds.filling[3]")).toBe(0);
  });
});

describe("SI", () => {
  it("gives the same job the same figures", () => {
    const [us, si] = [compile(toy, "us"), compile(toy, "si")];
    const metric = {
      ...toyJob,
      units: "si" as const,
      inputs: {
        ...toyJob.inputs,
        plot: 6.096,
        beds: [
          { name: "Wall", wide: 914.4, item: "OAK" },
          { name: "Path", wide: 457.2, soil: "sand", tall: 254 },
        ],
      },
    };
    const first = calculate(us, valuesOf(us, toyJob, toyBook));
    const second = calculate(si, valuesOf(si, metric, toyBook));
    const numbers = us.order.filter(({ declaration }) => declaration.quantity.kind === "number");
    expect(numbers.length).toBeGreaterThan(30);
    for (const { index, declaration, id } of numbers) {
      const expected = (first[index] as number) * t.fromUs(declaration.quantity, "si");
      expect(second[index], id).toBeCloseTo(expected, 9);
    }
  });
});
