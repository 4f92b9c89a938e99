import { describe, expect, it } from "vitest";
import { FormulaError } from "../../../engine/formula/formula-error.js";
import { parse } from "../../../engine/formula/parse.js";
import type { Tree } from "../../../engine/formula/tree.js";

/** A tree in brackets, so that the grouping can be read off. */
function grouped(tree: Tree): string {
  switch (tree.kind) {
    case "number":
      return `${tree.value}${tree.unit === undefined ? "" : `[${tree.unit}]`}`;
    case "text":
      return `'${tree.value}'`;
    case "boolean":
      return tree.value ? "yes" : "no";
    case "name":
      return tree.name;
    case "negate":
      return `(-${grouped(tree.of)})`;
    case "percent":
      return `(${grouped(tree.of)}%)`;
    case "binary":
      return `(${grouped(tree.left)}${tree.operator}${grouped(tree.right)})`;
    case "call":
      return `${tree.name}<${tree.args.map(grouped).join(" ")}>`;
    default:
      throw new Error(`${tree.kind} does not come from the parser`);
  }
}

const grammar: [formula: string, tree: string][] = [
  ["1+2*3", "(1+(2*3))"],
  ["SUM(a_1..a_3,b)", "SUM<a_1 a_2 a_3 b>"],
  ["SUM(b.a_9..b.a_11)", "SUM<b.a_9 b.a_10 b.a_11>"],
  ["(1+2)*3", "((1+2)*3)"],
  ["1-2-3", "((1-2)-3)"],
  ["8/4/2", "((8/4)/2)"],
  ["2*3/4", "((2*3)/4)"],
  ["-2^2", "((-2)^2)"],
  ["2^3^2", "((2^3)^2)"],
  ["2^-1", "(2^(-1))"],
  ["--x", "(-(-x))"],
  ["+x", "x"],
  ["-+x", "(-x)"],
  ["1--x", "(1-(-x))"],
  ["2%", "(2%)"],
  ["-2%", "(-(2%))"],
  ["2%%", "((2%)%)"],
  ["2%^3", "((2%)^3)"],
  ["10*5%", "(10*(5%))"],
  ["a&b=c&d", "((a&b)=(c&d))"],
  ["a+1&b", "((a+1)&b)"],
  ["1<2=TRUE", "((1<2)=yes)"],
  ["a<>b", "(a<>b)"],
  ["a<=b", "(a<=b)"],
  ["a>=b+1", "(a>=(b+1))"],
  ["6[in]", "6[in]"],
  ["6 [gal/h per in]*2", "(6[gal/h per in]*2)"],
  ["1[]", "1[]"],
  ["-6[ft²]", "(-6[ft²])"],
  [".5+1.+1e3+2.5E-3", "(((0.5+1)+1000)+0.0025)"],
  ["1e+2", "100"],
  ['"say ""no"""', "'say \"no\"'"],
  ['""', "''"],
  ['"a"&"b"', "('a'&'b')"],
  ["true", "yes"],
  ["FALSE", "no"],
  ["falls.flow", "falls.flow"],
  ["_x1", "_x1"],
  ["PI()", "PI<>"],
  ["pi( )", "PI<>"],
  ["if(a>0,min(a,b),-1)", "IF<(a>0) MIN<a b> (-1)>"],
  ["BINOM.DIST(a,b,c,TRUE)", "BINOM.DIST<a b c yes>"],
  ["SUM((1+2))", "SUM<(1+2)>"],
  ["  1\n+\t2 ", "(1+2)"],
];

describe("parse", () => {
  it.each(grammar)("%s", (formula, tree) => {
    expect(grouped(parse(formula))).toBe(tree);
  });
});

const errors: [formula: string, at: number, reason: RegExp][] = [
  ["", 0, /a value is missing: the formula ends/],
  ["   ", 3, /a value is missing/],
  ["1+", 2, /a value is missing: the formula ends/],
  ["*2", 0, /a value is missing: "\*" stands there/],
  ["1 2", 2, /"2" was not expected here/],
  ["a b", 2, /"b" was not expected here/],
  ["(1+2", 4, /"\)" is missing: the formula ends/],
  ["SUM(1,2", 7, /"\)" is missing: the formula ends/],
  ["SUM(1 2)", 6, /"\)" is missing: "2" stands there/],
  ["1+2)", 3, /"\)" was not expected here/],
  ["SUM(,1)", 4, /a value is missing: "," stands there/],
  ["SUM(1,)", 6, /a value is missing: "\)" stands there/],
  ["=1+2", 0, /a value is missing: "=" stands there/],
  ["1 ~ 2", 2, /"~" has no meaning in a formula/],
  ["a@b", 1, /"@" has no meaning/],
  ["A1:B2", 2, /":" has no meaning/],
  ["x#", 1, /"#" has no meaning/],
  ["{1}", 0, /"\{" has no meaning/],
  ["1;2", 1, /";" has no meaning/],
  ["Sheet!x", 5, /"!" has no meaning/],
  ['1&"abc', 2, /text has no closing quote/],
  ["6[in", 1, /unit has no closing bracket/],
  ["a[in]", 1, /"\[in\]" was not expected here/],
  ["[in]", 0, /a value is missing: "\[in\]" stands there/],
  ["1e999", 0, /"1e999" is too large/],
  ["1>>2", 2, /a value is missing: ">" stands there/],
  ["lift.", 4, /"\." has no meaning/],
  ["a..b", 1, /"\.\." was not expected here/],
  ["SUM(a..b)", 5, /"\.\." stands between two names that count up/],
  ["SUM(a_2..a_1)", 7, /"\.\." stands between two names/],
  ["SUM(a_1..b_2)", 7, /"\.\." stands between two names/],
  ["SUM(a_1..4)", 7, /"\.\." stands between two names/],
];

describe("what cannot be parsed is refused with the place and the reason", () => {
  it.each(errors)("%s", (formula, at, reason) => {
    let caught: unknown;
    try {
      parse(formula);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(FormulaError);
    const fault = caught as FormulaError;
    expect(fault.reason).toMatch(reason);
    expect(fault.at).toBe(at);
    expect(fault.message).toBe(`${fault.reason} (at character ${at + 1} of: ${formula})`);
  });

  const nested = (levels: number): [string, string][] => [
    ["brackets", `${"(".repeat(levels)}1${")".repeat(levels)}`],
    ["signs", `${"-".repeat(levels)}1`],
    ["functions", `${"ABS(".repeat(levels)}1${")".repeat(levels)}`],
  ];
  it.each(nested(60))("more than 60 levels of %s", (_, formula) => {
    expect(() => parse(formula)).toThrow(/nested deeper than 60 levels/);
  });
  it.each(nested(59))("but not fewer levels of %s", (_, formula) => {
    expect(parse(formula)).toBeDefined();
  });
  it.each(nested(100_000))(
    "nor 100,000 levels of %s, without running out of stack",
    (_, formula) => {
      expect(() => parse(formula)).toThrow(FormulaError);
    },
  );

  it("reads a long formula of one level", () => {
    expect(parse(Array.from({ length: 2000 }, (_, i) => `x_${i}`).join("+")).kind).toBe("binary");
  });
});
