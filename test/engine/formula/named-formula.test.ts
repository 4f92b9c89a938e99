import { describe, expect, it } from "vitest";
import { FormulaError } from "../../../engine/formula/formula-error.js";
import { columnOf, formula, type NamedFormula } from "../../../engine/formula/named-formula.js";
import * as q from "../../../engine/units/quantity.js";
import { soilVolume } from "../../../sheets/vocabulary/quantities.js";
import { opened, printed } from "../../support/scope.js";

const source = "invented";
const volume = formula(
  "FILL",
  "a layer",
  { ground: q.area, deep: q.smallLength },
  soilVolume,
  "ground*deep",
  source,
);
const twice = formula("TWICE", "doubled", { x: q.length }, q.length, "x+x", source);
const spread = formula("SPREAD", "less", { x: q.length, y: q.length }, q.length, "x-y", source);
const nested = formula(
  "FOUR",
  "doubled twice",
  { y: q.length },
  q.length,
  "TWICE(TWICE(y))",
  source,
);
/** Bare numbers in stated units, as empirical formulas have them. */
const empirical = formula(
  "PULL",
  "invented rule of thumb",
  { flow: "gal/min", wide: "in" },
  "ft",
  "0.2*flow^1.85/wide^4.87",
  source,
);
const share = formula("PART", "a share", { x: q.length, y: q.length }, "", "x/y", source);
const larger = formula(
  "LARGER",
  "the larger",
  { x: q.smallLength, y: q.smallLength },
  q.smallLength,
  "MAX(x,y)",
  source,
);
const largerTwice = formula(
  "LARGER_TWICE",
  "itself",
  { x: q.smallLength },
  q.smallLength,
  "2*LARGER(x,x)-x",
  source,
);
const highest = formula(
  "HIGHEST",
  "of a column",
  { all: columnOf(q.smallLength) },
  q.length,
  "MAX(all)",
  source,
);
const all = [volume, twice, spread, nested, empirical, share, larger, largerTwice, highest];

const inlined: [formula: string, quantity: q.Quantity, us: string, si: string][] = [
  ["FILL(bed,gap)", soilVolume, "bed*gap/324", "bed*gap/1000"],
  ["FILL(bed,plot)", soilVolume, "bed*(plot*12)/324", "bed*(plot*1000)/1000"],
  ["FILL(bed+bed,gap)", soilVolume, "(bed+bed)*gap/324", "(bed+bed)*gap/1000"],
  // arithmetic alone goes through columns row by row
  [
    "SUMPRODUCT(FILL(bed,rows.thick))",
    soilVolume,
    "SUMPRODUCT(bed*rows.thick/324)",
    "SUMPRODUCT(bed*rows.thick/1000)",
  ],
  [
    "SUMPRODUCT(rows.thick*1,TWICE(rows.thick))",
    q.area,
    "SUMPRODUCT(rows.thick*1,rows.thick/12+rows.thick/12)/12",
    "SUMPRODUCT(rows.thick*1,rows.thick/1000+rows.thick/1000)/1000",
  ],
  ["HIGHEST(rows.thick)", q.length, "MAX(rows.thick)/12", "MAX(rows.thick)/1000"],
  ["TWICE(plot)", q.length, "plot+plot", "plot+plot"],
  ["2*TWICE(plot)", q.length, "2*(plot+plot)", "2*(plot+plot)"],
  ["TWICE(gap)", q.length, "gap/12+gap/12", "gap/1000+gap/1000"],
  ["TWICE(plot)", q.smallLength, "(plot+plot)*12", "(plot+plot)*1000"],
  ["TWICE(0)", q.length, "0+0", "0+0"],
  ["FOUR(plot)", q.length, "plot+plot+(plot+plot)", "plot+plot+(plot+plot)"],
  ["SPREAD(plot,plot-gap)", q.length, "plot-(plot-gap/12)", "plot-(plot-gap/1000)"],
  ["-SPREAD(plot,plot)", q.length, "-(plot-plot)", "-(plot-plot)"],
  ["bed/SPREAD(plot,plot)", q.length, "bed/(plot-plot)", "bed/(plot-plot)"],
  [
    "PULL(rate,gap)",
    q.head,
    "0.2*rate^1.85/gap^4.87",
    "0.2*(rate/3.785411784)^1.85/(gap/25.4)^4.87*0.3048",
  ],
  [
    "plot+PULL(slow_rate,gap)",
    q.length,
    "plot+0.2*(slow_rate/60)^1.85/gap^4.87",
    "plot+0.2*(slow_rate/227.12470704)^1.85/(gap/25.4)^4.87*0.3048",
  ],
  ["PULL(10[gal/min],2[in])", q.length, "0.2*10^1.85/2^4.87", "0.2*10^1.85/2^4.87*0.3048"],
  ["PART(gap,plot)", q.percent, "gap/12/plot", "gap/1000/plot"],
  // capitals or not, as with every function
  ["twice(plot)", q.length, "plot+plot", "plot+plot"],
];

describe("named formulas open into native functions", () => {
  it.each(inlined)("%s", (text, quantity, us, si) => {
    expect(printed(text, quantity, "us", all)).toBe(us);
    expect(printed(text, quantity, "si", all)).toBe(si);
  });

  it("takes an argument's name for its own parameter only", () => {
    const inner = formula("INNER", "", { x: q.length, y: q.length }, q.length, "x-y", source);
    const outer = formula(
      "OUTER",
      "",
      { x: q.length, y: q.length },
      q.length,
      "INNER(y,x)",
      source,
    );
    expect(printed("OUTER(plot,gap)", q.length, "us", [inner, outer])).toBe("gap/12-plot");
  });
});

const badCalls: [formula: string, reason: RegExp][] = [
  ["FILL(bed)", /FILL takes 2 arguments \(ground, deep\), not 1/],
  ["FILL(bed,gap,gap)", /FILL takes 2 arguments \(ground, deep\), not 3/],
  ["FILL(plot,gap)", /"ground" of FILL should be length\^2 but is length/],
  ["FILL(title,gap)", /"ground" of FILL should be length\^2 but is text/],
  ["FILL(bed,1)", /"deep" of FILL should be length but is a plain number/],
  ["PULL(rate,bed)", /"wide" of PULL should be length but is length\^2/],
  ["FILL(bed,rows.thick)", /the result should be one value but is a whole column/],
  ["SUM(FILL(bed,rows.thick))", /SUM cannot calculate with a whole column/],
  ["SUMPRODUCT(LARGER(gap,rows.thick))", /"y" of LARGER .* its MAX does not go through row by row/],
  ["SUMPRODUCT(LARGER_TWICE(rows.thick))", /"x" of LARGER_TWICE .* its MAX does not go through/],
  ["HIGHEST(gap)", /"all" of HIGHEST takes a whole column/],
  ["HIGHEST(rows.name)", /"all" of HIGHEST should be length but is text/],
  ["FIL(bed,gap)", /the function FIL is not on the list .* Did you mean "FILL"\?/],
];

describe("calls that do not fit are refused", () => {
  it.each(badCalls)("%s", (text, reason) => {
    expect(() => printed(text, soilVolume, "us", all)).toThrow(reason);
  });
});

const badBodies: [what: string, formulas: NamedFormula[], reason: RegExp][] = [
  [
    "a body of another quantity",
    [formula("BAD", "", { x: q.length }, q.area, "x+x", source)],
    /the result should be length\^2 but is length/,
  ],
  [
    "an unknown parameter",
    [formula("BAD", "", { deep: q.length }, q.length, "depp+deep", source)],
    /the name "depp" is not known\. Did you mean "deep"\?/,
  ],
  [
    "a name of the sheets",
    [formula("BAD", "", { x: q.length }, q.length, "x+plot", source)],
    /the name "plot" is not known/,
  ],
  [
    "an empirical body with a unit in it",
    [formula("BAD", "", { x: "ft" }, "ft", "x+1[ft]", source)],
    /"\+" cannot take a plain number with length/,
  ],
  [
    "itself",
    [formula("BAD", "", { x: q.length }, q.length, "BAD(x)", source)],
    /named formulas call each other in a circle: BAD -> BAD/,
  ],
  [
    "a circle of three",
    [
      formula("BAD", "", { x: q.length }, q.length, "ONE(x)", source),
      formula("ONE", "", { x: q.length }, q.length, "TWO(x)", source),
      formula("TWO", "", { x: q.length }, q.length, "ONE(x)", source),
    ],
    /in a circle: ONE -> TWO -> ONE/,
  ],
];

describe("bodies that do not hold are refused, each time they are asked for", () => {
  it.each(badBodies)("%s", (_, formulas, reason) => {
    for (let time = 0; time < 2; time++) {
      expect(() => opened("IF(BAD(plot)=0,1,2)", q.number, "us", formulas)).toThrow(reason);
      expect(() => opened("IF(BAD(plot)=0,1,2)", q.number, "us", formulas)).toThrow(FormulaError);
    }
  });

  it("refuses a text that cannot be read where it is declared", () => {
    expect(() => formula("BAD", "", {}, q.length, "1+", source)).toThrow(FormulaError);
  });
});
