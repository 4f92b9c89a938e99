import { describe, expect, it } from "vitest";
import { FormulaError } from "../../../engine/formula/formula-error.js";
import { lookups } from "../../../engine/formula/lookups.js";
import * as q from "../../../engine/units/quantity.js";
import { printed } from "../../support/scope.js";

const place = "MATCH(title,rows.name,0)";
const listed = "SUMPRODUCT((rows.name=title)*1)>0";

const written: [formula: string, quantity: q.Quantity, us: string, si?: string][] = [
  ["PICK(rows.cost,rows.name,title)", q.money, `INDEX(rows.cost,${place})`],
  [
    "PICK(rows.width,rows.name,title)",
    q.smallLength,
    `INDEX(rows.width,${place})*12`,
    `INDEX(rows.width,${place})*1000`,
  ],
  ["PICK(rows.name,rows.at,1)", q.text, "INDEX(rows.name,MATCH(1,rows.at,0))"],
  ["PICK(rows.used,rows.at,1)", q.yesno, "INDEX(rows.used,MATCH(1,rows.at,0))"],
  // the key comes in the unit of the keys
  [
    "PICK(rows.cost,rows.thick,plot)",
    q.money,
    "INDEX(rows.cost,MATCH(plot*12,rows.thick,0))",
    "INDEX(rows.cost,MATCH(plot*1000,rows.thick,0))",
  ],
  [
    "PICK_OR(rows.width,rows.name,title,gap)",
    q.length,
    `IF(${listed},INDEX(rows.width,${place}),gap/12)`,
    `IF(${listed},INDEX(rows.width,${place}),gap/1000)`,
  ],
  ["PICK_OR(rows.width,rows.name,title,0)", q.length, `IF(${listed},INDEX(rows.width,${place}),0)`],
  ["PLACE_OR_ZERO(rows.name,title)", q.count, `IF(${listed},${place},0)`],
  ["LISTED(rows.name,title)", q.yesno, listed],
  ["COUNT_WHERE(rows.name,title)", q.count, "SUMPRODUCT((rows.name=title)*1)"],
  ["SUM_WHERE(rows.cost,rows.name,title)", q.money, "SUMPRODUCT((rows.name=title)*1,rows.cost)"],
  [
    "LARGEST_WHERE(rows.width,rows.name,title)",
    q.length,
    `IF(${listed},MAXIFS(rows.width,rows.name,title),0)`,
  ],
  [
    "LEAST_WHERE(rows.width,rows.name,title)",
    q.length,
    `IF(${listed},MINIFS(rows.width,rows.name,title),0)`,
  ],
];

describe("look-ups print as native functions, in the unit of the column", () => {
  it.each(written)("%s", (formula, quantity, us, si = us) => {
    expect(printed(formula, quantity, "us", lookups)).toBe(us);
    expect(printed(formula, quantity, "si", lookups)).toBe(si);
  });
});

const refused: [formula: string, quantity: q.Quantity, reason: RegExp][] = [
  ["PICK(rows.cost,rows.name,title)", q.length, /the result should be length but is money/],
  ["PICK(rows.cost,rows.name,plot)", q.money, /"key" of PICK should be text but is length/],
  ["PICK(rows.cost,rows.width,bill)", q.money, /"key" of PICK should be length but is money/],
  ["PICK(plot,rows.name,title)", q.length, /"column" of PICK takes a whole column/],
  ["PICK(rows.width*2,rows.name,title)", q.length, /"column" of PICK takes a whole column/],
  ["PICK(rows.width,rows.name,rows.name)", q.length, /"key" of PICK should be one value/],
  ["PICK_OR(rows.width,rows.name,title,bill)", q.length, /"otherwise" of PICK_OR should be length/],
  ["SUM_WHERE(rows.name,rows.at,1)", q.number, /takes a column of numbers, not of text/],
  ["LARGEST_WHERE(rows.used,rows.at,1)", q.number, /takes a column of numbers, not of yes or no/],
  ["PICK(rows.cost,rows.name)", q.money, /PICK takes 3 arguments \(column, keys, key\), not 2/],
];

describe("look-ups keep to units and columns", () => {
  it.each(refused)("%s", (formula, quantity, reason) => {
    expect(() => printed(formula, quantity, "us", lookups)).toThrow(FormulaError);
    expect(() => printed(formula, quantity, "us", lookups)).toThrow(reason);
  });
});
