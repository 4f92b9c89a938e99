import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "../../../engine/formula/parse.js";
import { conversion, type PrintStyle, print } from "../../../engine/formula/print.js";
import type { Operator, Tree } from "../../../engine/formula/tree.js";
import { byName } from "../../support/scope.js";

const operators: Operator[] = ["+", "-", "*", "/", "^", "&", "=", "<>", "<", "<=", ">", ">="];

const leaf: fc.Arbitrary<Tree> = fc.oneof(
  fc.nat(1000).map((value): Tree => ({ kind: "number", value })),
  fc
    .double({ min: 0, noNaN: true, noDefaultInfinity: true })
    .map((value): Tree => ({ kind: "number", value })),
  fc.boolean().map((value): Tree => ({ kind: "boolean", value })),
  fc.string().map((value): Tree => ({ kind: "text", value })),
  fc.constantFrom("lift", "falls.flow", "x_1").map((name): Tree => ({ kind: "name", name })),
);

const { tree: anyTree } = fc.letrec<{ tree: Tree }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 6, depthSize: "small" },
    leaf,
    fc
      .tuple(fc.constantFrom(...operators), tie("tree"), tie("tree"))
      .map(([operator, left, right]): Tree => ({ kind: "binary", operator, left, right })),
    tie("tree").map((of): Tree => ({ kind: "negate", of })),
    tie("tree").map((of): Tree => ({ kind: "percent", of })),
    fc
      .tuple(fc.constantFrom("SUM", "IF", "BINOM.DIST"), fc.array(tie("tree"), { maxLength: 3 }))
      .map(([name, args]): Tree => ({ kind: "call", name, args })),
    fc
      .tuple(fc.constantFrom(60, 1 / 60, 12, 0.3048), tie("tree"))
      .map(([factor, of]): Tree => ({ kind: "convert", factor, of })),
  ),
}));

/** What the parser makes of a tree: conversions are arithmetic on paper. */
function onPaper(tree: Tree): Tree {
  switch (tree.kind) {
    case "convert": {
      const { operator, by } = conversion(tree.factor);
      return {
        kind: "binary",
        operator,
        left: onPaper(tree.of),
        right: { kind: "number", value: by },
      };
    }
    case "binary":
      return { ...tree, left: onPaper(tree.left), right: onPaper(tree.right) };
    case "negate":
    case "percent":
      return { ...tree, of: onPaper(tree.of) };
    case "call":
      return { ...tree, args: tree.args.map(onPaper) };
    default:
      return tree;
  }
}

describe("what is printed is read back as the same tree", () => {
  const styles: PrintStyle[] = [byName, { ...byName, exponent: "E" }];
  it.each(styles)("with exponent $exponent", (style) => {
    fc.assert(
      fc.property(anyTree, (tree) => {
        const text = print(tree, style);
        const again = parse(text);
        expect(again).toEqual(onPaper(tree));
        expect(print(again, style)).toBe(text);
      }),
      { numRuns: 1500, seed: 7 },
    );
  });
});

const texts: [formula: string, printed: string][] = [
  ["(1+2)*3", "(1+2)*3"],
  ["1+(2*3)", "1+2*3"],
  ["1-(2-3)", "1-(2-3)"],
  ["(1-2)-3", "1-2-3"],
  ["2^(3^2)", "2^(3^2)"],
  ["(2^3)^2", "2^3^2"],
  ["(-2)^2", "(-2)^2"],
  ["-(2^2)", "-(2^2)"],
  ["0-(-2)", "0-(-2)"],
  ["-(-2)", "-(-2)"],
  ["(2%)%", "(2%)%"],
  ["(-2)%", "(-2)%"],
  ["-(2%)", "-2%"],
  ["(1+2)%", "(1+2)%"],
  ["2^5%", "2^5%"],
  ['"a""b"&""', '"a""b"&""'],
];

describe("print keeps the brackets that are needed, and no others", () => {
  it.each(texts)("%s", (formula, text) => {
    expect(print(parse(formula), byName)).toBe(text);
  });
});

describe("each program has its own spelling", () => {
  const cases: [what: string, tree: Tree, style: Partial<PrintStyle>, text: string][] = [
    ["exponents", { kind: "number", value: 1e-7 }, { exponent: "E" }, "1E-7"],
    ["exponents", { kind: "number", value: 1e21 }, { exponent: "e" }, "1e21"],
    ["negative numbers", { kind: "number", value: -2 }, {}, "(-2)"],
    ["quotes", { kind: "text", value: 'a"b' }, { quotes: "joined" }, '("a"&CHAR(34)&"b")'],
    ["quotes", { kind: "text", value: "ab" }, { quotes: "joined" }, '"ab"'],
    ["truth", { kind: "boolean", value: true }, { calledBooleans: true }, "TRUE()"],
    ["units", { kind: "number", value: 6, unit: "in" }, { literalUnits: true }, "6 in"],
    ["units", { kind: "number", value: 6, unit: "in" }, {}, "6"],
    ["parameters", { kind: "parameter", name: "x" }, { parameter: (n) => `<${n}>` }, "<x>"],
    [
      "newer functions",
      { kind: "call", name: "MAXIFS", args: [] },
      { prefixed: true },
      "_xlfn.MAXIFS()",
    ],
    ["older functions", { kind: "call", name: "SUM", args: [] }, { prefixed: true }, "SUM()"],
    ["newer functions", { kind: "call", name: "MAXIFS", args: [] }, {}, "MAXIFS()"],
  ];
  it.each(cases)("%s: %j %j", (_, tree, style, text) => {
    expect(print(tree, { ...byName, ...style })).toBe(text);
  });
});

describe("conversion", () => {
  const factors: [factor: number, operator: string, by: number][] = [
    [60, "*", 60],
    [1 / 60, "/", 60],
    [12, "*", 12],
    [1 / 12, "/", 12],
    [0.3048, "*", 0.3048],
    [1 / 0.3048, "/", 0.3048],
    [27, "*", 27],
    [1 / 27, "/", 27],
    [0.3048 / 0.0254, "*", 12],
    [1000, "*", 1000],
    [0.001, "/", 1000],
    [1e-6, "/", 1000000],
    [(231 * 0.0254 ** 3) / 0.001, "*", 3.785411784],
    [448.831168831169, "*", 448.831168831169],
    [1 / 3, "/", 3],
  ];
  it.each(factors)("%d is written %s%d", (factor, operator, by) => {
    expect(conversion(factor)).toEqual({ operator, by });
  });

  it("is the factor, to 15 digits", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (factor) => {
        const { operator, by } = conversion(factor);
        const applied = operator === "*" ? by : 1 / by;
        // a number short without its last digits is taken to be meant so
        expect(Math.abs(applied / factor - 1)).toBeLessThan(1e-12);
      }),
    );
  });
});
